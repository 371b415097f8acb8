import type { Envelope } from '@libs/kernel';
import type { Plant, Tellings } from '@libs/plant';
import { tellStory } from '../support/demonstration-plant';
import type { Wish } from '../support/demonstration-plant';

/**
 * Goal: a line that loses answers changes nothing in the record.
 * Method: the same story twice; the second time every third answer is lost, and the tablet sends the same again under
 * the same key, now and then twice at once. Both ledgers must hold the same events in the same order, all their fields but
 * the sealed boxes.
 */
jest.setTimeout(180_000);

const WISH: Wish = { homes: 14, seed: 'bad line', lastDay: '2026-03-06' };

type Counts = { lost: number; repeated: number; other: number };

/** Sends again what was not answered. What comes back then must be the first answer. */
const overBadLine =
  (counts: Counts) =>
  (plant: Plant): Plant => {
    let sent = 0;
    const tell = Object.fromEntries(
      Object.entries(sendersOf(plant)).map(([name, send]) => [
        name,
        async (...words: never[]): Promise<Told> => {
          sent += 1;
          if (sent % 3 !== 0) return send(...words);

          counts.lost += 1;
          const resends = sent % 2 === 0 ? [send(...words), send(...words)] : [send(...words)];
          const [first] = await Promise.all(resends);
          const again = await send(...words);
          if (first?.ok === true && again.ok) count(counts, first.answer, again.answer);
          return again;
        },
      ]),
    );
    return { ...plant, tell: asTellings(tell) };
  };

type Told = {
  readonly ok: boolean;
  readonly answer: { readonly events: readonly object[]; readonly repeated: boolean };
};

type Send = (...words: never[]) => Promise<Told>;

/** Tellings of any name, as far as sending them again goes. */
const sendersOf = ({ tell }: Plant): { readonly [name: string]: Send } =>
  tell as unknown as { readonly [name: string]: Send };

/** The same names as before, each with a function of the same kind. */
const asTellings = (tell: object): Tellings => tell as Tellings;

const count = (counts: Counts, first: Told['answer'], again: Told['answer']): void => {
  const isSame = JSON.stringify(first.events) === JSON.stringify(again.events);
  if (isSame && (again.repeated || first.events.length === 0)) counts.repeated += 1;
  else counts.other += 1;
};

/** What is sealed anew is sealed under another nonce: the text is the same, its box is not. */
const unsealed = (event: Envelope): string =>
  JSON.stringify(event).replace(/sealed:v1:([^:]*):[A-Za-z0-9_-]+/g, 'sealed for $1');

describe('a line that loses answers', () => {
  it('leaves the same record, event for event, as one that loses none', async () => {
    const counts: Counts = { lost: 0, repeated: 0, other: 0 };
    const well = await tellStory(WISH);
    const badly = await tellStory(WISH, overBadLine(counts));
    try {
      expect(counts.lost).toBeGreaterThan(300);
      expect(counts).toStrictEqual({ lost: counts.lost, repeated: counts.lost, other: 0 });
      expect((await badly.events()).map(unsealed)).toStrictEqual((await well.events()).map(unsealed));
    } finally {
      await well.clear();
      await badly.clear();
    }
  });
});
