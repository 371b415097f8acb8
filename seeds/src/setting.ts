import type { RulebookFiles } from '@libs/rulebook';
import { lineOf } from './demonstration-files';
import { floorClock, workingDays } from './floor-clock';
import type { Flow } from './flow';
import { runHome } from './home-run';
import type { HomePart } from './home-run';
import { planLine } from './line-plan';
import type { Stay } from './line-plan';
import { orderHome } from './models';
import type { HomeOrder } from './models';
import { demoPeople, staffOf } from './people';
import type { Chance } from './random';
import { runSection } from './section-run';
import { theStory } from './story';
import type { Fault } from './story';
import { later } from './world';
import type { World } from './world';

export type Setting = {
  readonly name: string;
  readonly zone: string;
  readonly world: World;
  readonly faults: Map<string, readonly Fault[]>;
  readonly instruments: Map<string, string>;
  readonly homes: readonly PlannedHome[];
  readonly sections: number;
};

type PlannedHome = {
  readonly part: HomePart;
  readonly sections: readonly { readonly stays: readonly Stay[]; readonly shipMs: number | null }[];
};

/** Shops make their product while the section stands at this line station. */
const SHOPS = new Map([
  ['floor', ['wall-shop']],
  ['rough-in', ['roof-shop']],
  ['finish', ['cabinet-shop']],
]);
/** Ordered and not begun when the story stops: the order book a visitor sees. */
const ORDER_BOOK = 6;
const DAY_MS = 86_400_000;
const [BEFORE_BOARDS, BOARDS, AFTER_BOARDS] = ['insulation', 'drywall', 'finish'];
const JUST_MOVED_MS = 45 * 60_000;
/** Minute of the first day at which the plant is opened, before the first start. */
const OPENS_AT = 330;

/** Everything that is settled before the story is told: the calendar, the homes, who stands where and when. */
export const settingOf = (
  files: RulebookFiles,
  wish: { readonly homes: number; readonly lastDay: string },
  chance: Chance,
): Setting => {
  const { name, zone, line } = lineOf(files);
  const orders = ordersOf(wish, chance);
  const built = orders.slice(0, wish.homes);
  const sections = built.reduce((sum, { sections: own }) => sum + own.length, 0);
  const plan = planLine(sections, line.length, chance.branch('line'));

  const clock = floorClock(zone);
  const days = workingDays(wish.lastDay, plan.days);
  const at = (day: number, minute: number): number => clock.at(days[day] ?? wish.lastDay, minute);
  const faults = new Map<string, readonly Fault[]>();
  const instruments = new Map<string, string>();
  const world: World = {
    clock,
    days,
    startMs: at(0, OPENS_AT),
    endMs: plan.endMs(at),
    staff: staffOf(demoPeople()),
    story: theStory,
    faults,
    stations: [...line, 'yard'],
    shops: SHOPS,
    instruments,
    labels: { next: 0, received: 0 },
    contained: { count: 0, tags: 0 },
    mounted: new Map(),
    badLots: new Set(),
    trimmedWithBadLot: new Set(),
    underway: new Map(),
  };
  const stays = (index: number): readonly Stay[] =>
    standingAtBoards(plan.stays(index, line, at), world.endMs);
  return {
    name,
    zone,
    world,
    faults,
    instruments,
    homes: planned(orders, { world, stays, chance }),
    sections,
  };
};

/**
 * Who would just have gone from the boards on to finish stands before them still, and who is at insulation has just
 * come: a visitor finds sections waiting there, whatever the line's pace made of the last morning.
 */
const standingAtBoards = (stays: readonly Stay[], endMs: number): readonly Stay[] => {
  const last = stays.at(-1);
  const before = stays.at(-2);
  if (last?.toMs !== null || last.pulled !== null) return stays;
  if (last.station === AFTER_BOARDS && before !== undefined)
    return [...stays.slice(0, -2), { ...before, toMs: null }];
  if (last.station !== BEFORE_BOARDS) return stays;

  const movedMs = endMs - JUST_MOVED_MS;
  return [
    ...stays.slice(0, -1),
    { ...last, toMs: movedMs },
    { station: BOARDS, fromMs: movedMs, toMs: null, pulled: null },
  ];
};

const ordersOf = (
  { homes, lastDay }: { homes: number; lastDay: string },
  chance: Chance,
): readonly HomeOrder[] => {
  const year = lastDay.slice(2, 4);
  const models = chance.branch('orders');
  return Array.from({ length: homes + ORDER_BOOK }, (_, number) => orderHome(number, year, models));
};

type Planning = {
  readonly world: World;
  readonly stays: (section: number) => readonly Stay[];
  readonly chance: Chance;
};

const planned = (
  orders: readonly HomeOrder[],
  { world, stays, chance }: Planning,
): readonly PlannedHome[] => {
  let next = 0;
  return orders.map((home) => {
    const own = chance.branch(`dates ${home.home}`);
    const itineraries = home.sections.map((_, index) => stays(next + index));
    next += home.sections.length;

    const shipMs = shipping(world, itineraries, own);
    const startMs = itineraries[0]?.[0]?.fromMs ?? world.endMs;
    const orderMs = Math.max(world.startMs + 60_000, startMs - DAY_MS * own.between(3, 12));
    return {
      part: { home, orderMs, shippedMs: shipMs, escaped: [] },
      sections: itineraries.map((itinerary) => ({ stays: itinerary, shipMs })),
    };
  });
};

/** All sections of a home leave together, some days after the last has reached the yard. */
const shipping = (world: World, itineraries: readonly (readonly Stay[])[], chance: Chance): number | null => {
  const ready = itineraries.map((stays) => stays.at(-1)?.toMs ?? null);
  const last = ready.reduce<number | null>(
    (max, ms) => (max === null || ms === null ? null : Math.max(max, ms)),
    0,
  );
  return last === null || last === 0 ? null : later(world, last + DAY_MS * chance.between(1, 8), 60);
};

/** One thread a home and one a section, in the order they were ordered. */
export const threadsOf = ({ world, homes }: Setting, chance: Chance): readonly Flow[] =>
  homes.flatMap(({ part, sections }) => [
    runHome(world, part, chance.branch(`home ${part.home.home}`)),
    ...sections
      .map((section, index) => ({ ...section, index }))
      .filter(({ stays }) => stays.length > 0)
      .map((section) =>
        runSection(
          world,
          { ...section, home: part.home, escaped: part.escaped },
          chance.branch(`section ${part.home.home} ${String(section.index)}`),
        ),
      ),
  ]);
