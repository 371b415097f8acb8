import { binomialCdf, gainFor, limitFor } from '@libs/quality';
import type { UnitCusum } from '@libs/quality';
import { chanceFrom } from './chance';
import type { Chance } from './chance';

export const UNITS_PER_DAY = 8;
export const DAYS_PER_WEEK = 5;
const UNITS_PER_WEEK = UNITS_PER_DAY * DAYS_PER_WEEK;
/** Sections before the change, so that both charts stand as they do on any day. */
const BEFORE = 600;

/** Alarm at `count` or more defective a week; at one fewer, with this chance: so that both charts wait equally long. */
type WeeklyLimit = { readonly count: number; readonly lower: number };

export const weeklyLimit = (share: number, daysBetween: number): WeeklyLimit => {
  const asked = DAYS_PER_WEEK / daysBetween;
  const atLeast = (count: number): number => 1 - binomialCdf(count - 1, UNITS_PER_WEEK, share);
  let count = 0;
  while (atLeast(count) > asked) count += 1;
  return { count, lower: (asked - atLeast(count)) / (atLeast(count - 1) - atLeast(count)) };
};

/** Working days from the change to the signal. */
const unitDelay = ({ gain, limit }: UnitCusum, share: number, after: number, chance: Chance): number => {
  let score = 0;
  for (let unit = 0; unit < BEFORE; unit += 1) {
    score = chance() < share ? score + gain : Math.max(0, score - 1);
    if (score >= limit) score = 0;
  }
  for (let unit = 1; ; unit += 1) {
    score = chance() < after ? score + gain : Math.max(0, score - 1);
    if (score >= limit) return Math.ceil(unit / UNITS_PER_DAY);
  }
};

const weeklyDelay = (limit: WeeklyLimit, share: number, after: number, chance: Chance): number => {
  let day = Math.floor(chance() * DAYS_PER_WEEK);
  let found = defectives(day * UNITS_PER_DAY, share, chance);
  for (let waited = 1; ; waited += 1) {
    found += defectives(UNITS_PER_DAY, after, chance);
    day += 1;
    if (day < DAYS_PER_WEEK) continue;
    if (found >= limit.count || (found === limit.count - 1 && chance() < limit.lower)) return waited;
    day = 0;
    found = 0;
  }
};

const defectives = (units: number, share: number, chance: Chance): number => {
  let found = 0;
  for (let unit = 0; unit < units; unit += 1) if (chance() < share) found += 1;
  return found;
};

export type Delay = { readonly unitByUnit: number; readonly weekly: number; readonly ratioError: number };

/** Mean days to a signal after the share doubles on any day of the week, both charts as long between false alarms. */
export const delaysAfterDoubling = (
  share: number,
  daysBetween: number,
  { runs, seed }: { readonly runs: number; readonly seed: number },
): Delay => {
  const chance = chanceFrom(seed);
  const gain = gainFor(share, 2 * share);
  const design = { gain, limit: limitFor(gain, share, daysBetween * UNITS_PER_DAY) };
  const limit = weeklyLimit(share, daysBetween);
  const unit = meanAndError(runs, () => unitDelay(design, share, 2 * share, chance));
  const week = meanAndError(runs, () => weeklyDelay(limit, share, 2 * share, chance));
  const relative = Math.sqrt((unit.error / unit.mean) ** 2 + (week.error / week.mean) ** 2);
  return { unitByUnit: unit.mean, weekly: week.mean, ratioError: (week.mean / unit.mean) * relative };
};

const meanAndError = (
  runs: number,
  draw: () => number,
): { readonly mean: number; readonly error: number } => {
  const drawn = Array.from({ length: runs }, draw);
  const mean = drawn.reduce((sum, each) => sum + each, 0) / runs;
  const variance = drawn.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (runs - 1);
  return { mean, error: Math.sqrt(variance / runs) };
};
