import type { AnswerOf } from '@libs/contracts';
import { gapsBetween, gChart } from '@libs/quality';
import { CHART } from '@libs/record';
import type { ChartState } from '@libs/record';
import type { Days, YieldSums } from '@libs/views';
import type { Span } from '../told';
import type { Asked } from './asked';
import { chartNoteSays } from './chart-notes';
import { daysOf } from './days';
import { foundWhere } from './found-where';
import { alarmsOf, budgetOf, planOf, windowOf } from './unit-chart';
import type { Budget, UnitRun } from './unit-chart';
import { weeklyChart } from './weekly-chart';

type StationDays = UnitRun['days'];

/** One station's charts: week by week with limits, section by section with alarms, and where its misses were found. */
export const stationChartQuestion =
  (asked: Asked) =>
  async (station: string, span: Span): Promise<AnswerOf<'stationChart'>> => {
    const { ledger, views, names } = asked;
    const position = await ledger.head();
    const days = await daysOf(span, asked);
    const window = windowOf(days);
    const chart = await ledger.state(CHART, station);
    const [byDay, marks, charts, found] = await Promise.all([
      views.yieldByDay(station, { from: firstDay(chart, window, days), to: days.to }),
      views.runs(station, window),
      views.yieldByStation(window),
      views.found(station, days),
    ]);
    const budget = await budgetOf(asked, charts.size);
    const counted = countsOf(byDay);
    const run = {
      marks: marks.get(station) ?? '',
      chart,
      days: counted.filter(({ day }) => day >= window.from),
    };
    const says = chartNoteSays(asked, station);
    return {
      station,
      name: names.current().station(station),
      ...days,
      position,
      budget,
      weekly: weeklyChart(
        counted.map((each) => ({ ...each, station })),
        days,
        { baselines: chart.baselines.map((one) => ({ ...one, note: says(one).note })), rules: budget.rules },
      ),
      unit: unitOf(asked, run, { station, budget, days }),
      gaps: gapsOf(run.marks),
      annotations: chart.annotations.map((one) => ({ day: one.day, note: says(one).note, by: says(one).by })),
      found: foundWhere(found, station, asked),
    };
  };

const firstDay = ({ baselines }: ChartState, window: Days, days: Days): string =>
  [window.from, days.from, ...baselines.map(({ from }) => from)].reduce((a, b) => (a < b ? a : b));

const countsOf = (byDay: ReadonlyMap<string, YieldSums>): StationDays =>
  [...byDay].map(([day, { left, clean }]) => ({ day, left, clean }));

type Where = { readonly station: string; readonly budget: Budget; readonly days: Days };

const unitOf = (
  asked: Asked,
  run: UnitRun,
  { station, budget, days }: Where,
): AnswerOf<'stationChart'>['unit'] => {
  const plan = planOf(run, budget);
  if (plan === null) return null;

  const { scores, alarms } = alarmsOf(run, plan, chartNoteSays(asked, station));
  let sofar = 0;
  const byDay = run.days.map(({ day, left, clean }) => {
    const own = scores.slice(sofar, sofar + left);
    sofar += left;
    return { day, left, nonconforming: left - clean, highest: Math.max(0, ...own), score: own.at(-1) ?? 0 };
  });
  return {
    plan,
    days: byDay.filter(({ day }) => day >= days.from),
    alarms: alarms.filter(({ day }) => day >= days.from),
  };
};

const gapsOf = (marks: string): AnswerOf<'stationChart'>['gaps'] => {
  const gaps = gapsBetween(Array.from(marks).map((mark) => mark === '0'));
  const { center, upper } = gChart(gaps);
  return { center, upper, gaps: [...gaps] };
};
