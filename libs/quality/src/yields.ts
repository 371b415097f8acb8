import { share } from './rate';
import type { Rate } from './rate';

/** One station over a span, in units. */
export type Step = {
  /** Units that came in. */
  readonly in: number;
  /** Units that went out good, reworked ones among them. */
  readonly goodOut: number;
  /** Of those, the ones that needed rework. */
  readonly reworked: number;
};

/**
 * The names are swapped in some texts, so every figure travels with its formula, and screens show it.
 */
export const FORMULAS = {
  firstTime: 'good out / in (after rework)',
  firstPass: '(good out - reworked) / in',
  rolled: 'product of first-pass yields',
  defectsPerUnit: 'defects / units',
  throughput: 'exp(-defects per unit), a Poisson model and not an observed share',
  sigmaLevel: 'normal quantile of (1 - defects per opportunity) + 1.5, one tail',
} as const;

export const firstTimeYield = (step: Step): Rate => ({ count: step.goodOut, of: step.in });
export const firstPassYield = (step: Step): Rate => ({ count: step.goodOut - step.reworked, of: step.in });

/** Product of the steps that had anything to count; null where none had. */
export const rolledYield = (rates: readonly Rate[]): number | null => {
  const shares = rates.flatMap((rate) => share(rate) ?? []);
  return shares.length === 0 ? null : shares.reduce((product, each) => product * each, 1);
};

/**
 * Where a line loses: rolled yield is a product, so its logarithm is a sum, and each step has its part of that. Null
 * where nothing is lost at all or a step lost everything, and for a step that had nothing to count.
 */
export const lossShares = (rates: readonly Rate[]): readonly (number | null)[] => {
  const losses = rates.map((rate) => {
    const yielded = share(rate);
    return yielded === null ? null : Math.log(1 / yielded);
  });
  const total = losses.reduce<number>((sum, loss) => sum + (loss ?? 0), 0);
  return losses.map((loss) => (loss === null || total === 0 || total === Infinity ? null : loss / total));
};

/** The yield each of `steps` equal steps would have to give this rolled yield. */
export const normalizedYield = (rolled: number, steps: number): number => Math.pow(rolled, 1 / steps);

/**
 * First-pass yield from a log of attempts: each unit counts once, by its first result.
 * Passes over attempts is a common mistake: it counts a unit as often as it is retested.
 */
export const firstResultYield = (results: readonly (readonly boolean[])[]): Rate => {
  const tried = results.filter((attempts) => attempts.length > 0);
  return { count: tried.filter(([first]) => first === true).length, of: tried.length };
};

/** Share of tried units whose last result is good: what leaves the station right in the end. */
export const lastResultYield = (results: readonly (readonly boolean[])[]): Rate => {
  const tried = results.filter((attempts) => attempts.length > 0);
  return { count: tried.filter((attempts) => attempts.at(-1) === true).length, of: tried.length };
};
