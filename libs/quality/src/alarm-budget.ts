import { gainFor, limitFor, unitCusumRunLength } from './charts';
import type { UnitCusum } from './charts';
import { binomialCdf, normalQuantile } from './distributions';

/**
 * One budget for the whole plant: how many false alarms a month it will bear, over all charts together. Every chart gets
 * an equal part, and its limits follow from that part. Ten charts that each seem strict are one loud plant.
 */
export type AlarmBudget = { readonly falseAlarmsPerMonth: number; readonly charts: number };

/**
 * Unless the plant says otherwise: three false alarms a year, all charts together. RUN-LENGTHS.md has what it buys: from
 * about here on the unit-by-unit chart finds a doubled share twice as soon as a weekly one.
 */
export const DEFAULT_BUDGET = 0.25;

/** Working days a month: 5 of 7 days, 365.25 days a year, 12 months. */
export const WORKDAYS_PER_MONTH = (365.25 * 5) / 7 / 12;

/** Working days that have to pass, on average, between two false alarms of one chart. */
export const workdaysBetween = ({ falseAlarmsPerMonth, charts }: AlarmBudget): number =>
  (charts * WORKDAYS_PER_MONTH) / falseAlarmsPerMonth;

export type UnitChartPlan = UnitCusum & {
  /** Share defective it takes for usual, and the one it is built to find: twice that. */
  readonly usual: number;
  readonly sought: number;
  /** Units, on average, between two false signals: exact. At least what the budget asks. */
  readonly unitsBetween: number;
};

/** Shares outside these make no chart: nothing ever goes wrong there, or nothing ever goes right. */
const LEAST_SHARE = 0.0005;
const MOST_SHARE = 0.4;

/** The unit-by-unit chart of a station with this usual share and these units a day. */
export const unitChartFor = (
  { usual, unitsPerDay }: { readonly usual: number; readonly unitsPerDay: number },
  budget: AlarmBudget,
): UnitChartPlan => {
  const share = Math.min(MOST_SHARE, Math.max(LEAST_SHARE, usual));
  const sought = 2 * share;
  const gain = gainFor(share, sought);
  const limit = limitFor(gain, share, workdaysBetween(budget) * unitsPerDay);
  const unitsBetween = unitCusumRunLength({ gain, limit }, share);
  return { gain, limit, usual: share, sought, unitsBetween };
};

/**
 * The share to take for usual when it was counted on few units: not the best guess but one it likely is not above, for
 * a chart built on a share that is too low cries wolf. Posterior mean plus one standard deviation, uniform prior.
 */
export const cautiousShare = (count: number, of: number): number => {
  const mean = (count + 1) / (of + 2);
  return Math.min(1, mean + Math.sqrt((mean * (1 - mean)) / (of + 3)));
};

/** Most units with the event in a subgroup that is no alarm; the chance of more is within the budget, exactly. */
export const mostWithoutAlarm = (of: number, share: number, chanceAPoint: number): number => {
  let most = Math.floor(of * share);
  while (most < of && 1 - binomialCdf(most, of, share) > chanceAPoint) most += 1;
  return most;
};

/** Chance of a false alarm that one point of a chart may have, when it gets a point every so many working days. */
export const chanceAPoint = (budget: AlarmBudget, workdaysAPoint: number): number =>
  Math.min(1, workdaysAPoint / workdaysBetween(budget));

/** Standard deviations from center to limits that give both sides together this chance, for normal points. */
export const widthFor = (chance: number): number => normalQuantile(1 - chance / 2);
