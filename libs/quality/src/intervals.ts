import { betaQuantile, chiSquareUpperQuantile, normalReach } from './distributions';
import type { Rate } from './rate';

/** Two-sided; null bounds where nothing was counted. */
export type Interval = { readonly low: number | null; readonly high: number | null };

/** What the screens show unless asked otherwise. */
export const CONFIDENCE = 0.95;

export const INTERVAL_METHODS = ['wilson', 'wilson-corrected', 'clopper-pearson'] as const;
export type IntervalMethod = (typeof INTERVAL_METHODS)[number];

const nothing: Interval = { low: null, high: null };

/**
 * Wilson's score interval (Wilson 1927; Newcombe 1998, method 3). The default: it stays inside 0 and 1 and keeps its
 * confidence at the small counts of a plant that builds a few sections a day.
 */
export const wilson = ({ count, of }: Rate, confidence: number = CONFIDENCE): Interval => {
  if (of === 0) return nothing;

  const z = normalReach(confidence);
  const p = count / of;
  const middle = p + (z * z) / (2 * of);
  const reach = z * Math.sqrt((p * (1 - p)) / of + (z * z) / (4 * of * of));
  const scale = 1 + (z * z) / of;
  return {
    low: count === 0 ? 0 : (middle - reach) / scale,
    high: count === of ? 1 : (middle + reach) / scale,
  };
};

/** Wilson's with continuity correction (Newcombe 1998, method 4): as cautious as the exact one, nearly as short. */
export const wilsonCorrected = ({ count, of }: Rate, confidence: number = CONFIDENCE): Interval => {
  if (of === 0) return nothing;

  const z = normalReach(confidence);
  const p = count / of;
  const middle = 2 * count + z * z;
  const scale = 2 * (of + z * z);
  const reach = (sign: 1 | -1): number =>
    z * Math.sqrt(z * z + sign * 2 - 1 / of + 4 * p * (of * (1 - p) - sign)) + 1;
  return {
    low: count === 0 ? 0 : (middle - reach(-1)) / scale,
    high: count === of ? 1 : (middle + reach(1)) / scale,
  };
};

/** Clopper and Pearson's exact interval (Newcombe 1998, method 5): never below its confidence, therefore wide. */
export const clopperPearson = ({ count, of }: Rate, confidence: number = CONFIDENCE): Interval => {
  if (of === 0) return nothing;

  const tail = (1 - confidence) / 2;
  return {
    low: count === 0 ? 0 : betaQuantile(tail, count, of - count + 1),
    high: count === of ? 1 : betaQuantile(1 - tail, count + 1, of - count),
  };
};

/** The exact interval of a Poisson count (Garwood 1936): claims, defects. */
export const poissonExact = (
  count: number,
  confidence: number = CONFIDENCE,
): { readonly low: number; readonly high: number } => {
  const tail = (1 - confidence) / 2;
  return {
    low: count === 0 ? 0 : chiSquareUpperQuantile(1 - tail, 2 * count) / 2,
    high: chiSquareUpperQuantile(tail, 2 * (count + 1)) / 2,
  };
};
