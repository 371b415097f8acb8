import { tell } from './flow';
import type { Flow } from './flow';
import type { Hidden, Section } from './section-state';
import { learn } from './section-state';
import { telling } from './telling';
import { anotherInspector, later } from './world';

/** Some faults are grave enough to stop the section there and then. */
const HELD = 0.12;

/** Somebody sees what is wrong and says so. */
export function* report(section: Section, { fault, place }: Hidden, foundAt: string): Flow {
  const { world, chance, serial } = section;
  section.now = later(world, section.now, chance.between(2, 12));
  const said = yield* tell(
    telling(
      'defect',
      {
        serial,
        ...fault,
        place,
        foundAt,
        hold: chance.yes(HELD),
        photos: chance.yes(0.5) ? [chance.hex(64)] : [],
        occurredAt: world.clock.instant(section.now),
        device: 'tablet-quality',
      },
      { actor: anotherInspector(world, '', chance), atMs: section.now },
    ),
  );
  learn(section, said);
  for (const one of said) {
    if (!one.ok) continue;
    const defect = defectOf(one.key);
    if (!section.defects.some((known) => known.defect === defect)) {
      section.defects.push({ defect, operation: fault.operation, reworkedBy: null });
    }
  }
}

/** A defect told by hand takes its id from the key it was told under. */
export const defectOf = (key: string): string => `${key}-0`;

/** Finish touch-up for the whole section in one row, signed off as one list. */
export function* punchList(section: Section, station: string): Flow {
  const { world, chance, serial } = section;
  const actor = anotherInspector(world, '', chance);
  section.now = later(world, section.now, 5);
  const said = yield* tell(
    telling(
      'defect',
      {
        serial,
        class: 'punch',
        component: chance.pick(['paint', 'wallboard', 'molding', 'floor-covering']),
        symptom: 'scratched',
        foundAt: station,
        quantity: chance.between(10, section.wet ? 40 : 28),
        occurredAt: world.clock.instant(section.now),
        device: 'tablet-quality',
      },
      { actor, atMs: section.now },
    ),
  );
  const [first] = said;
  if (first?.ok !== true) return;

  section.now = later(world, section.now, chance.between(25, 60));
  yield* close(section, defectOf(first.key), 'signed');
}

export function* close(section: Section, defect: string, how: 'fitted' | 'signed'): Flow {
  const { world, chance, serial } = section;
  yield* tell(
    telling(
      'closing',
      { serial, how, occurredAt: world.clock.instant(section.now), device: 'tablet-final' },
      { actor: chance.pick(world.staff.crew('trim')), atMs: section.now, params: { defect } },
    ),
  );
}
