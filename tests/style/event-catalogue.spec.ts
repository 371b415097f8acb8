import { readFileSync } from 'node:fs';
import { CATALOGUE, catalogue, events } from './event-catalogue';

describe('the event catalogue', () => {
  it('is current: it says what the types say', () => {
    expect(readFileSync(CATALOGUE, 'utf8')).toBe(catalogue());
  });

  it('finds every kind of stream', () => {
    const kinds = new Set(events().map(({ kind }) => kind));
    expect([...kinds]).toStrictEqual([
      'account',
      'agency',
      'chart',
      'claim',
      'containment',
      'delivery',
      'determination',
      'instrument',
      'label',
      'label-supply',
      'lot',
      'person',
      'plant',
      'rulebook',
      'station',
      'unit',
    ]);
  });

  it('names events in the past tense, as the floor would say them', () => {
    const odd = events().filter(
      ({ name }) =>
        !/(ed|Done|Sent|Set|Left|Off|Withdrawn|Held|In|Out|Given|Taken|Drawn|Made|Seen)$/.test(name),
    );
    expect(odd.map(({ name }) => name)).toStrictEqual([]);
  });
});
