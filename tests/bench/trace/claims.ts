import type { Dice } from './dice';
import type { Line } from './line';
import { MAP_WEIGHT } from './planted-cause';
import type { PlantedCause } from './planted-cause';
import type { PlantShape } from './plant-shape';

export type PlantedClaim = {
  readonly section: number;
  readonly due: boolean;
  readonly reported: string | null;
  readonly noticed: number;
};

export type Drawn = {
  readonly claims: readonly PlantedClaim[];
  /** Chances to be claimed without a cause, by section: what an oracle may know. */
  readonly chances: Float64Array;
};

export type Effect = { readonly size: 'small' | 'large'; readonly times: number };

export const EFFECTS = { small: [3, 8], large: [8, 60] } as const;

export const drawEffect = (dice: Dice): Effect =>
  dice.is(0.5)
    ? { size: 'small', times: dice.scale(...EFFECTS.small) }
    : { size: 'large', times: dice.scale(...EFFECTS.large) };

/** A dry half has about a third of a wet one's chances for a defect. */
const DRY = 0.35;
const HALF_LIFE_DAYS = 110;

/** How often each section would be complained of without a cause: by month, model, age and half. */
export const drawChances = (dice: Dice, line: Line): Float64Array => {
  const sway = dice.between(0.1, 0.6);
  const months = new Map<number, number>();
  for (const { month } of line.homes) months.set(month, months.get(month) ?? Math.exp(sway * dice.bell()));
  const models = Array.from({ length: line.shape.models }, () => Math.exp(0.45 * dice.bell()));
  return Float64Array.from(line.sections, ({ home, dry }) => {
    const at = line.homes[home];
    if (at === undefined || at.occupied > line.lastDay) return 0;
    const lived = 1 - 2 ** (-(line.lastDay - at.occupied) / HALF_LIFE_DAYS);
    return lived * (months.get(at.month) ?? 1) * (models[at.model] ?? 1) * (dry ? DRY : 1);
  });
};

/** The rate at which about so many sections are claimed, each with 1 - exp(-rate * chance). */
export const rateFor = (target: number, chances: Float64Array): number => {
  let sum = 0;
  let highest = 0;
  for (const chance of chances) {
    sum += chance;
    if (chance > highest) highest = chance;
  }
  let rate = target / sum;
  for (let step = 0; step < 8 && rate * highest > 0.02; step++) {
    const next = closerRate(rate, target, chances);
    if (Math.abs(next / rate - 1) < 1e-3) return next;
    rate = next;
  }
  return rate;
};

const closerRate = (rate: number, target: number, chances: Float64Array): number => {
  let claimed = 0;
  let slope = 0;
  for (const chance of chances) {
    if (chance === 0) continue;
    const none = Math.exp(-rate * chance);
    claimed += 1 - none;
    slope += chance * none;
  }
  return Math.max(rate / 4, rate + (target - claimed) / Math.max(slope, 1e-12));
};

/** Of the claims that a "use" cause draws, so many are due to it. */
export const USE_DUE = 0.75;

export const drawClaims = (
  dice: Dice,
  line: Line,
  context: { cause: PlantedCause | null; times: number; target: number; chances: Float64Array },
): readonly PlantedClaim[] => {
  const { cause, times, chances } = context;
  const isUse = cause?.kind === 'use';
  const raised = chances.map((chance, at) =>
    cause === null || isUse ? chance : chance * (1 + (times - 1) * (cause.shares[at] ?? 0)),
  );
  const rate = rateFor(context.target, raised);
  const claims: PlantedClaim[] = [];
  raised.forEach((chance, section) => {
    if (!dice.is(1 - Math.exp(-rate * chance))) return;
    const dueShare = isUse ? USE_DUE : 1 - (chances[section] ?? 0) / chance;
    const due = cause !== null && dice.is(dueShare);
    claims.push({
      section,
      due,
      reported: drawReport(dice, line.shape, due ? cause.source : null),
      noticed: noticedOn(dice, line, section),
    });
  });
  return claims;
};

const noticedOn = (dice: Dice, line: Line, section: number): number => {
  const home = line.homes[line.sections[section]?.home ?? 0];
  const lived = line.lastDay - (home?.occupied ?? 0);
  return (home?.occupied ?? 0) + Math.floor(dice.next() ** 2 * lived);
};

/** A claim of its own has a source of its own, drawn from what the map names. */
export const usualSource = (dice: Dice, { map }: PlantShape): string =>
  map[dice.weighted(map.map(({ letter }) => MAP_WEIGHT[letter]))]?.source ?? '';

const drawReport = (dice: Dice, shape: PlantShape, cause: string | null): string | null => {
  const source = cause ?? usualSource(dice, shape);
  if (!dice.is(shape.reported)) return null;
  return dice.is(shape.reportsRight) ? source : usualSource(dice, shape);
};
