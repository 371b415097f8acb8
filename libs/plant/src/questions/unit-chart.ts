import type { AnswerOf } from '@libs/contracts';
import {
  cautiousShare,
  changeBefore,
  DEFAULT_BUDGET,
  RULE_SET_RUN_LENGTHS,
  runUnitCusum,
  unitChartFor,
  wilson,
  workdaysBetween,
} from '@libs/quality';
import type { Rate, UnitChartPlan } from '@libs/quality';
import { CHART } from '@libs/record';
import type { ChartState } from '@libs/record';
import type { Days, StationDay } from '@libs/views';
import { ALL_CHARTS } from '../charts';
import type { Asked } from './asked';
import { addDays } from './days';

type Unit = NonNullable<AnswerOf<'stationChart'>['unit']>;
export type UnitPlan = Unit['plan'];
export type Alarm = Unit['alarms'][number];
export type Budget = AnswerOf<'stationChart'>['budget'];

/**
 * Half a year: some hundred sections even at a slow station, half of them for a baseline that nobody set. What lies
 * further back says little of the plant as it is, and a chart's memory is shorter.
 */
const WINDOW_DAYS = 182;

/** The days a unit-by-unit chart looks back on. By the last day only, so that every span shows the same alarms. */
export const windowOf = ({ to }: Days): Days => ({ from: addDays(to, -WINDOW_DAYS), to });

export const budgetOf = async ({ ledger }: Asked, charts: number): Promise<Budget> => {
  const { budget } = await ledger.state(CHART, ALL_CHARTS);
  const falseAlarmsPerMonth = budget === null ? DEFAULT_BUDGET : Number(budget.falseAlarmsPerMonth);
  const rules = budget?.rules ?? 'few-counts';
  return {
    falseAlarmsPerMonth,
    charts,
    workdaysBetween: charts === 0 ? 0 : workdaysBetween({ falseAlarmsPerMonth, charts }),
    rules,
    pointsBetween: RULE_SET_RUN_LENGTHS[rules],
  };
};

/** Plans by what they are built on: a station that all but never fails takes a tenth of a second to work out. */
const KNOWN_PLANS = new Map<string, UnitChartPlan>();
const PLANS_KEPT = 2_000;

const knownPlan = (usual: number, unitsPerDay: number, budget: Budget): UnitChartPlan => {
  const key = [usual, unitsPerDay, budget.workdaysBetween].join(' ');
  const known = KNOWN_PLANS.get(key) ?? unitChartFor({ usual, unitsPerDay }, budget);
  if (KNOWN_PLANS.size >= PLANS_KEPT) KNOWN_PLANS.clear();
  KNOWN_PLANS.set(key, known);
  return known;
};

/** Three digits, rounded up: cautious, and the same plan serves until something changes. */
const roundedUp = (share: number): number => Math.ceil(share * 1_000) / 1_000;

/** What a station's chart is worked out from: its sections in order, a mark each, and how many left on which day. */
export type UnitRun = {
  readonly marks: string;
  readonly days: readonly Pick<StationDay, 'day' | 'left' | 'clean'>[];
  readonly chart: ChartState;
};

/** Null: nothing has left the station. */
export const planOf = ({ days, chart }: UnitRun, budget: Budget): UnitPlan | null => {
  const [first] = days;
  const last = days.at(-1);
  if (first === undefined || last === undefined) return null;

  const baseline = baselineOf(days, chart, last.day);
  const { count, of } = baseline.counted;
  const usual = roundedUp(cautiousShare(count, of));
  return { ...knownPlan(usual, Math.ceil(unitsPerDay(days)), budget), baseline };
};

const baselineOf = (days: UnitRun['days'], { baselines }: ChartState, last: string): UnitPlan['baseline'] => {
  const set = baselines.filter(({ from }) => from <= last).at(-1);
  const within = set && days.filter(({ day }) => day >= set.from && day <= set.to);
  if (set !== undefined && within !== undefined && within.length > 0) {
    return { from: set.from, to: set.to, counted: countedIn(within), by: 'person' };
  }
  const early = firstHalf(days);
  return {
    from: early[0]?.day ?? last,
    to: early.at(-1)?.day ?? last,
    counted: countedIn(early),
    by: 'assumed',
  };
};

/** The days on which the first half of the sections left. */
const firstHalf = (days: UnitRun['days']): UnitRun['days'] => {
  const all = days.reduce((sum, { left }) => sum + left, 0);
  let sofar = 0;
  return days.filter(({ left }) => {
    const belongs = sofar < all / 2;
    sofar += left;
    return belongs;
  });
};

const countedIn = (days: UnitRun['days']): Rate => ({
  count: days.reduce((sum, { left, clean }) => sum + left - clean, 0),
  of: days.reduce((sum, { left }) => sum + left, 0),
});

/** Over five of seven days from the first to the last. */
const unitsPerDay = (days: UnitRun['days']): number => {
  const ms = Date.parse(days.at(-1)?.day ?? '') - Date.parse(days[0]?.day ?? '');
  const workdays = Math.max(1, ((ms / 86_400_000 + 1) * 5) / 7);
  return days.reduce((sum, { left }) => sum + left, 0) / workdays;
};

/** The run of scores, and what is to be said of each alarm. */
export const alarmsOf = (
  run: UnitRun,
  plan: UnitPlan,
  noteSays: NoteSays,
): { readonly scores: readonly number[]; readonly alarms: readonly Alarm[] } => {
  const defective = Array.from(run.marks).map((mark) => mark === '0');
  const { scores, signals } = runUnitCusum(defective, plan);
  const dayOf = dayFinder(run.days);
  const alarms = signals.map((at, index) => {
    const earlier = signals[index - 1] ?? -1;
    const start = Math.max(earlier + 1, changeBefore(scores, at));
    const day = dayOf(at);
    const told = run.chart.acknowledged.filter((one) => one.day === day).at(-1);
    return {
      day,
      change: changeOf(defective, { start, at }, dayOf(start)),
      acknowledged: told === undefined ? null : noteSays(told),
    };
  });
  return { scores, alarms };
};

export type NoteSays = (told: ChartState['acknowledged'][number]) => NonNullable<Alarm['acknowledged']>;

const changeOf = (
  defective: readonly boolean[],
  { start, at }: { readonly start: number; readonly at: number },
  since: string,
): Alarm['change'] => {
  const before = tally(defective.slice(0, start));
  const after = tally(defective.slice(start, at + 1));
  return { since, before, beforeInterval: wilson(before), after, afterInterval: wilson(after) };
};

const tally = (defective: readonly boolean[]): Rate => ({
  count: defective.filter(Boolean).length,
  of: defective.length,
});

/** The day on which the section of this index left. */
const dayFinder = (days: UnitRun['days']): ((index: number) => string) => {
  const ends: { readonly day: string; readonly end: number }[] = [];
  for (const { day, left } of days) ends.push({ day, end: (ends.at(-1)?.end ?? 0) + left });
  return (index) => ends.find(({ end }) => index < end)?.day ?? ends.at(-1)?.day ?? '';
};
