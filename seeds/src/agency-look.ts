import { contain } from './contain';
import { defectOf } from './finding-out';
import { tell } from './flow';
import type { Flow } from './flow';
import { mend } from './mending';
import type { KnownDefect, Section } from './section-state';
import { learn } from './section-state';
import { telling } from './telling';
import { later, yearGone } from './world';

/** Of the homes looked at, these have something the agency calls a failure. */
const FAILS = 0.06;
/** Of its failures, these get a red tag. */
const TAGGED = 0.2;
/** So near the end of the story that what happens now is still to be seen. */
const LAST_DAYS = 0.985;

/** Each home in at least one stage: of the first section always one, of the others now and then. */
export const stageToSee = (
  stations: readonly string[],
  index: number,
  chance: Section['chance'],
): string | null => (index === 0 || chance.yes(0.3) ? chance.pick(stations.slice(1, -3)) : null);

/** The agency's inspector looks at this section where it stands. */
export function* agencyLooks(section: Section): Flow {
  const { world, serial, at } = section;
  const chance = section.agency;
  section.now = later(world, section.now, 4);
  yield* tell(
    telling(
      'stageSeen',
      { serial, station: at, occurredAt: world.clock.instant(section.now), device: 'tablet-agency' },
      { actor: world.staff.agency, atMs: section.now },
    ),
  );
  const isLast = yearGone(world, section.now) > LAST_DAYS;
  if (section.leftOpen.size === 0 && chance.yes(isLast ? 0.4 : FAILS)) yield* failure(section, isLast);
}

function* failure(section: Section, isLast: boolean): Flow {
  const { world, serial, at } = section;
  const chance = section.agency;
  const faults = [...section.done].flatMap((operation) => world.faults.get(operation) ?? []);
  if (faults.length === 0) return;

  const fault = chance.pick(faults);
  section.now = later(world, section.now, 5);
  const [said] = yield* tell(
    telling(
      'defect',
      {
        serial,
        ...fault,
        foundAt: at,
        severity: chance.pick(['minor', 'major', 'major', 'critical'] as const),
        photos: [chance.hex(64)],
        occurredAt: world.clock.instant(section.now),
        device: 'tablet-agency',
      },
      { actor: world.staff.agency, atMs: section.now },
    ),
  );
  if (said?.ok !== true) return;
  const known: KnownDefect = { defect: defectOf(said.key), operation: fault.operation, reworkedBy: null };
  section.defects.push(known);

  if (chance.yes(isLast ? 0.7 : TAGGED)) yield* tagged(section, known, isLast);
  const wanted = isLast ? 2 : yearGone(world, section.now) > 0.5 ? 1 : 0;
  if (world.contained.count < wanted) {
    world.contained.count = wanted;
    yield* contain(section, { ...known, operation: fault.operation }, isLast);
  }
}

/** Red tags are few; the last of the story is still on when a visitor comes. */
function* tagged(section: Section, known: KnownDefect, isLast: boolean): Flow {
  const { world, serial } = section;
  world.contained.tags += 1;
  const tag = `RT-${String(world.contained.tags).padStart(4, '0')}`;
  section.now = later(world, section.now, 3);
  const body = { serial, occurredAt: world.clock.instant(section.now), device: 'tablet-agency' };
  yield* tell(
    telling(
      'redTag',
      { ...body, tag, defect: known.defect, rule: '3282.362(c)(1)' },
      { actor: world.staff.agency, atMs: section.now },
    ),
  );
  section.redTags.push(tag);
  if (isLast) return;

  yield* mend(section, known);
  yield* liftTags(section);
}

export function* liftTags(section: Section): Flow {
  const { world, serial } = section;
  for (const tag of section.redTags.splice(0)) {
    section.now = later(world, section.now, 15);
    const said = yield* tell(
      telling(
        'redTagLifting',
        { serial, occurredAt: world.clock.instant(section.now), device: 'tablet-agency' },
        { actor: world.staff.agency, atMs: section.now, params: { tag } },
      ),
    );
    learn(section, said);
  }
}
