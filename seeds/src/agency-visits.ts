import { tell, waitUntil } from './flow';
import type { Flow } from './flow';
import type { Chance } from './random';
import { telling } from './telling';
import { later } from './world';
import type { World } from './world';

/** Visits on these days of the working week: twice, as often as a plant of this pace sees its agency. */
const VISIT_EVERY_DAYS = 3;
/** Storage and test equipment are looked at at least once a month. */
const STOCK_EVERY_VISITS = 5;
/** Labels in the drawer: two to four weeks' worth. */
const LABELS_AT_ONCE = 60;
const LABELS_LEFT = 30;

const OBSERVATIONS = [
  { about: 'storage', subject: 'rack 4', rule: 'manual 6.2', note: 'Sealant stored below its temperature' },
  {
    about: 'manual',
    subject: 'page 31',
    rule: 'manual 3.1',
    note: 'Page at the station is not the current one',
  },
  {
    about: 'instrument',
    subject: 'torque driver',
    rule: 'manual 7.4',
    note: 'Calibration sticker unreadable',
  },
  { about: 'station', subject: 'roofing', rule: 'manual 5.9', note: 'Nailing pattern not posted' },
] as const;

const ANSWERS = [
  'Moved to the heated room',
  'Replaced and signed for',
  'New sticker on',
  'Posted on both sides',
];

/** What the inspection agency does besides looking at homes: labels given out, visits, and what it noted on them. */
export function* runAgency(world: World, chance: Chance): Flow {
  yield* giveLabels(world, world.startMs + 60_000);
  let visits = 0;
  for (let day = 1; day < world.days.length; day += VISIT_EVERY_DAYS) {
    const atMs = world.clock.at(world.days[day] ?? '', 480 + chance.between(0, 120));
    if (atMs > world.endMs) return;
    yield* waitUntil(atMs);
    if (world.labels.received - world.labels.next < LABELS_LEFT) yield* giveLabels(world, atMs);
    visits += 1;
    yield* visit(world, chance, { atMs, stock: visits % STOCK_EVERY_VISITS === 0 });
    if (visits % STOCK_EVERY_VISITS === 2 && chance.yes(0.7)) yield* observe(world, chance, atMs);
  }
}

function* giveLabels(world: World, atMs: number): Flow {
  const first = world.labels.received + 1;
  world.labels.received += LABELS_AT_ONCE;
  yield* tell(
    telling(
      'labelSupply',
      {
        first: labelNumber(first),
        last: labelNumber(world.labels.received),
        occurredAt: world.clock.instant(atMs),
        device: 'office-1',
      },
      { actor: world.staff.agency, atMs },
    ),
  );
}

/** Label numbers as issued to the demonstration plant: three letters and six digits, one after the other. */
export const labelNumber = (count: number): string => {
  const digits = String(400_000 + count);
  return `DEM ${digits.slice(0, 3)} ${digits.slice(3)}`;
};

function* visit(
  world: World,
  chance: Chance,
  { atMs, stock }: { readonly atMs: number; readonly stock: boolean },
): Flow {
  yield* tell(
    telling(
      'visit',
      {
        day: world.clock.day(atMs),
        stations: world.stations.filter((station) => station !== 'yard' && chance.yes(0.8)),
        storage: stock,
        equipment: stock,
        occurredAt: world.clock.instant(atMs),
        device: 'tablet-agency',
      },
      { actor: world.staff.agency, atMs },
    ),
  );
}

/** Noted, answered some days later, accepted on a visit after that; near the end of the story it is still open. */
function* observe(world: World, chance: Chance, atMs: number): Flow {
  const index = chance.between(0, OBSERVATIONS.length - 1);
  const seen = OBSERVATIONS[index] ?? OBSERVATIONS[0];
  const dueOn = world.clock.day(later(world, atMs + 10 * DAY_MS, 10));
  const when = (ms: number): { occurredAt: string; device: string } => ({
    occurredAt: world.clock.instant(ms),
    device: 'tablet-agency',
  });
  const [said] = yield* tell(
    telling('observation', { ...seen, dueOn, ...when(atMs) }, { actor: world.staff.agency, atMs }),
  );
  const answeredMs = later(world, atMs + chance.between(1, 6) * DAY_MS, 30);
  if (said?.ok !== true || answeredMs > world.endMs) return;

  const params = { observation: `${said.key}-0` };
  yield* waitUntil(answeredMs);
  yield* tell(
    telling(
      'observationAnswer',
      { note: ANSWERS[index] ?? 'Done', ...when(answeredMs) },
      { actor: world.staff.qualityManager, atMs: answeredMs, params },
    ),
  );
  const closedMs = later(world, answeredMs + DAY_MS * 2, 20);
  if (closedMs > world.endMs) return;
  yield* waitUntil(closedMs);
  yield* tell(
    telling(
      'observationClosing',
      { accepted: true, ...when(closedMs) },
      { actor: world.staff.agency, atMs: closedMs, params },
    ),
  );
}

const DAY_MS = 86_400_000;
