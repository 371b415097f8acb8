import { someoneWhoDidNotVouch } from './entries';
import { tell } from './flow';
import type { Flow } from './flow';
import type { Card } from './measured';
import type { Section } from './section-state';
import { learn } from './section-state';
import { telling } from './telling';
import { later } from './world';

/** Label numbers as issued to the demonstration plant: three letters and six digits, one after the other. */
const numberOf = (count: number): string => {
  const digits = String(400_000 + count);
  return `DEM ${digits.slice(0, 3)} ${digits.slice(3)}`;
};

export function* affixLabel(section: Section, card: Card): Flow {
  const { world, chance, serial } = section;
  section.now = later(world, section.now, chance.between(3, 10));
  world.labels.next += 1;
  const said = yield* tell(
    telling(
      'label',
      {
        serial,
        number: numberOf(world.labels.next),
        photos: [chance.hex(64)],
        occurredAt: world.clock.instant(section.now),
        device: `tablet-${card.station}`,
        station: card.station,
      },
      { actor: someoneWhoDidNotVouch(section), atMs: section.now },
    ),
  );
  learn(section, said);
  section.done.add(card.operation);
}
