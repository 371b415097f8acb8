import type { AnswerOf } from '@libs/contracts';
import {
  chartPhases,
  chooseChart,
  isBeyond,
  RULE_SETS,
  runSignals,
  standardised,
  WIDTH,
  wilson,
} from '@libs/quality';
import type { ControlChart, Phase, Rate, RuleSet } from '@libs/quality';
import type { Days, StationDay } from '@libs/views';
import { weeksOf } from './days';

type Weekly = AnswerOf<'stationChart'>['weekly'];
type Point = Weekly['points'][number];

/** A baseline as a person set it, its reason in clear. */
export type Baseline = { readonly from: string; readonly to: string; readonly note: string | null };

/** Rules that only say "beyond its limits", which every point says for itself. */
const ONE_POINT = ['WE1', 'N1'];

/** The share of sections with a nonconformance, week by week: up is worse. */
export const weeklyChart = (
  byDay: readonly StationDay[],
  days: Days,
  { baselines, rules }: { readonly baselines: readonly Baseline[]; readonly rules: RuleSet },
): Weekly => {
  const first = baselines.reduce((from, one) => (one.from < from ? one.from : from), days.from);
  const weeks = weeksOf({ from: first, to: days.to });
  const counted = weeks.map((week) => countedIn(byDay, week));
  const shown = weeks.flatMap(({ to }, at) => (to >= days.from ? [at] : []));
  const phases = phasesOf(weeks, baselines);
  const { kind: chosen, why } = chooseChart(counted, 'shares');
  const kind = chosen === 'p-prime' ? 'p-prime' : 'p';
  const charts = chartPhases(kind, counted, phases, WIDTH);
  const points = charts.flatMap((chart, phase) =>
    pointsOf(chart, { phase, from: phases[phase]?.from ?? 0, rules }),
  );
  return {
    kind,
    why,
    phases: phases.map((phase, at) => ({
      from: weeks[phase.from]?.from ?? days.from,
      center: charts[at]?.center ?? 0,
      inflation: charts[at]?.inflation ?? 1,
      baselineTo: weeks[Math.max(phase.from, phase.baselineTo - 1)]?.to ?? days.to,
      note: phase.note,
    })),
    points: shown.flatMap((at) => {
      const [week, point, pair] = [weeks[at], points[at], counted[at]];
      if (week === undefined || point === undefined || pair === undefined) return [];
      const sections = { left: pair.of, nonconforming: pair.count, interval: wilson(pair) };
      return [{ ...week, ...sections, ...point, rules: shiftedTo(point.rules, shown[0] ?? 0) }];
    }),
  };
};

const countedIn = (byDay: readonly StationDay[], { from, to }: Days): Rate => {
  const within = byDay.filter(({ day }) => day >= from && day <= to);
  const of = within.reduce((sum, { left }) => sum + left, 0);
  return { of, count: of - within.reduce((sum, { clean }) => sum + clean, 0) };
};

/** A phase begins with each baseline a person set; without one, all weeks are their own baseline. */
const phasesOf = (
  weeks: readonly Days[],
  baselines: readonly Baseline[],
): readonly (Phase & { readonly note: string | null })[] => {
  const set = baselines.map(({ from, to, note }) => ({
    from: Math.max(
      0,
      weeks.findIndex((week) => week.to >= from),
    ),
    baselineTo: weeks.filter((week) => week.from <= to).length,
    note,
  }));
  return set[0]?.from === 0
    ? set
    : [{ from: 0, baselineTo: set[0]?.from ?? weeks.length, note: null }, ...set];
};

type InPhase = { readonly phase: number; readonly from: number; readonly rules: RuleSet };
type Drawn = Omit<Point, 'from' | 'to' | 'left' | 'nonconforming' | 'interval'>;

const pointsOf = (chart: ControlChart, { phase, from, rules }: InPhase): readonly Drawn[] => {
  const read = RULE_SETS[rules].filter((rule) => !ONE_POINT.includes(rule));
  const signals = runSignals(standardised(chart), read);
  return chart.points.map((point, at) => ({
    value: point.value,
    center: point.value === null ? null : chart.center,
    lower: point.lower,
    upper: point.upper,
    phase,
    beyond: isBeyond(point),
    rules: signals
      .filter((signal) => signal.at === at)
      .map(({ rule, members }) => ({ rule, members: members.map((member) => member + from) })),
  }));
};

/** Members are told by their place among the points shown; those before the span are not shown. */
const shiftedTo = (rules: Point['rules'], first: number): Point['rules'] =>
  rules.map(({ rule, members }) => ({
    rule,
    members: members.map((member) => member - first).filter((member) => member >= 0),
  }));
