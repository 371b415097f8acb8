import { rightValues, workEntry } from './entries';
import type { Fates } from './fates';
import { tell } from './flow';
import type { Flow } from './flow';
import type { Card } from './measured';
import { typedValues } from './measured';
import type { Section } from './section-state';
import { telling } from './telling';
import { later } from './world';

/** The other half of the same home is scanned, and the entry is put right some minutes later. */
export function* wrongSerial(section: Section, card: Card, station: string, fates: Fates): Flow<boolean> {
  const { world, chance, serial } = section;
  const sibling = otherHalf(section, card);
  if (sibling === undefined) return false;
  const right = workEntry(section, card, station, { ...fates, outOfLimits: () => null, leftOut: () => null });
  const [wrong] = yield* tell({ ...right, body: { ...right.body, serial: sibling } });
  if (wrong?.ok !== true) return false;

  section.now = later(world, section.now, chance.between(3, 30));
  const [moved] = yield* tell(
    telling(
      'wrongSerial',
      {
        recordedOn: sibling,
        belongsTo: serial,
        operation: card.operation,
        note: 'Scanned the other half',
        occurredAt: world.clock.instant(section.now),
        device: 'tablet-quality',
      },
      { actor: right.actor, atMs: section.now },
    ),
  );
  if (moved?.ok === true) {
    section.done.add(card.operation);
    world.underway.get(sibling)?.forget(card.operation);
  }
  return moved?.ok === true;
}

/** A section of the same home that stands on the line too and has not had this work. */
const otherHalf = ({ world, home, serial }: Section, { operation }: Card): string | undefined =>
  home.sections.find(
    (one) => one.serial !== serial && world.underway.get(one.serial)?.mayTakeUp(operation) === true,
  )?.serial;

/** A figure written down wrong, noticed and put right: the entry stays, its values are replaced. */
export function* typo(section: Section, card: Card): Flow {
  const { world, chance, serial } = section;
  if (typedValues(card).length === 0) return;

  section.now = later(world, section.now, chance.between(2, 20));
  yield* tell(
    telling(
      'correction',
      {
        serial,
        operation: card.operation,
        values: rightValues(card, section),
        reason: 'misread',
        occurredAt: world.clock.instant(section.now),
        device: `tablet-${card.station}`,
      },
      { actor: chance.pick(world.staff.inspectors), atMs: section.now },
    ),
  );
}
