import { sectionCard } from '@libs/views';
import type { UnitEvent } from '@libs/record';
import { SERIAL, onLine, standing } from '../support/unit-spec';

const KEY = `section/${SERIAL}`;
const cardAfter = (...events: readonly UnitEvent[]) =>
  events.reduce<ReturnType<typeof sectionCard.apply> | undefined>(
    (card, event, at) => sectionCard.apply(card ?? undefined, standing(event, at + 1), KEY),
    undefined,
  );
const applied = (to: number): UnitEvent => ({
  type: 'RevisionApplied',
  data: { serial: SERIAL, from: 1, to, due: [], notDue: [], changed: [], findings: [] },
});

describe('the card of a section', () => {
  it('says by which revision it is judged, from the start and after another was applied', () => {
    expect(cardAfter(...onLine())?.revision).toBe(1);
    expect(cardAfter(...onLine(), applied(3))?.revision).toBe(3);
  });

  it('stays where it was and as long there as it was when another revision is applied', () => {
    const { station, since, stage } = cardAfter(...onLine('rough-in')) ?? {};
    expect(cardAfter(...onLine('rough-in'), applied(2))).toMatchObject({ station, since, stage });
  });
});
