import { cautiousShare, runUnitCusum, unitChartFor, WORKDAYS_PER_MONTH } from '@libs/quality';
import type { AlarmBudget } from '@libs/quality';
import { chanceFrom } from './chance';
import type { Chance } from './chance';

/** Sixteen stations that never change: shares of sections with a nonconformance, and sections a day. */
export const STATIONS = [
  0.005, 0.01, 0.015, 0.02, 0.025, 0.03, 0.035, 0.04, 0.05, 0.06, 0.07, 0.08, 0.1, 0.12, 0.15, 0.2,
].map((share, at) => ({ share, unitsPerDay: 4 + (at % 5) }));

export const YEARS = 10;
const MONTHS = YEARS * 12;

/** How the usual share is known: given, or counted on the first so many sections. */
export type Baseline = 'given' | { readonly units: number; readonly taken: 'as counted' | 'with caution' };

/** False alarms a month of one plant over ten years. */
const falseAlarms = (budget: AlarmBudget, baseline: Baseline, chance: Chance): number => {
  const signals = STATIONS.map(({ share, unitsPerDay }) => {
    const usual = baseline === 'given' ? share : counted(share, baseline, chance);
    const units = Math.round(MONTHS * WORKDAYS_PER_MONTH * unitsPerDay);
    const plan = unitChartFor({ usual, unitsPerDay }, budget);
    const defective = Array.from({ length: units }, () => chance() < share);
    return runUnitCusum(defective, plan).signals.length;
  });
  return signals.reduce((sum, each) => sum + each, 0) / MONTHS;
};

const counted = (share: number, { units, taken }: Exclude<Baseline, 'given'>, chance: Chance): number => {
  let count = 0;
  for (let at = 0; at < units; at += 1) if (chance() < share) count += 1;
  return taken === 'as counted' ? count / units : cautiousShare(count, units);
};

export type PlantRun = { readonly mean: number; readonly standardError: number };

/** Many such plants: mean false alarms a month, and how exactly it is known. */
export const simulatePlants = (
  falseAlarmsPerMonth: number,
  baseline: Baseline,
  { plants, seed }: { readonly plants: number; readonly seed: number },
): PlantRun => {
  const chance = chanceFrom(seed);
  const budget = { falseAlarmsPerMonth, charts: STATIONS.length };
  const runs = Array.from({ length: plants }, () => falseAlarms(budget, baseline, chance));
  const mean = runs.reduce((sum, each) => sum + each, 0) / plants;
  const variance = runs.reduce((sum, each) => sum + (each - mean) ** 2, 0) / Math.max(1, plants - 1);
  return { mean, standardError: Math.sqrt(variance / plants) };
};
