import { reconstructedEntry, workEntry } from './entries';
import { CAREFUL } from './fates';
import { tell } from './flow';
import type { Flow } from './flow';
import type { Card } from './measured';
import type { RecordHold, Section } from './section-state';
import { isReached, learn } from './section-state';
import { telling } from './telling';
import type { Telling } from './telling';
import { later } from './world';

/** Gone from sight with work that is done: only opening up can prove it now. */
export const isCovered = (section: Section, card: Card): boolean =>
  [...section.done].some((done) =>
    (section.cards.get(done)?.hides ?? []).some(
      ({ operation, hidden }) => operation === card.operation && hidden !== 'lift',
    ),
  );

/** What the record is short of is entered; a hold that stays all the same is decided by the quality manager. */
export function* makeRecordGood(section: Section): Flow {
  yield* enterMissing(section);
  for (const { hold, operation } of section.recordHolds) {
    const card = section.cards.get(operation ?? '');
    if (section.leftOpen.has(operation ?? '') || (card !== undefined && !isReached(section, card))) continue;
    const stays = section.recordHolds.some((one) => one.hold === hold);
    if (stays) yield* decide(section, hold);
  }
}

function* enterMissing(section: Section): Flow {
  const operations = new Set(section.recordHolds.map(({ operation }: RecordHold) => operation ?? ''));
  for (const operation of operations) {
    const card = section.cards.get(operation);
    const unsent = section.unsent.some(({ body }) => body['station'] === card?.station);
    if (card === undefined || card.label || !isReached(section, card)) continue;
    if (unsent || section.leftOpen.has(operation)) continue;
    section.now = later(section.world, section.now, section.chance.between(3, 20));
    learn(section, yield* tell(entered(section, card)));
    section.done.add(operation);
  }
}

const entered = (section: Section, card: Card): Telling =>
  isCovered(section, card)
    ? reconstructedEntry(section, card, card.station)
    : workEntry(section, card, card.station, CAREFUL);

function* decide(section: Section, hold: string): Flow {
  const { world, chance, serial } = section;
  section.now = later(world, section.now, chance.between(10, 60));
  const said = yield* tell(
    telling(
      'release',
      {
        serial,
        note: chance.pick([
          'Looked at it with the lead; as planned',
          'Photo on file shows it',
          'Asked the crew, saw the place',
        ]),
        occurredAt: world.clock.instant(section.now),
        device: 'tablet-quality',
      },
      { actor: world.staff.qualityManager, atMs: section.now, params: { hold } },
    ),
  );
  learn(section, said);
}
