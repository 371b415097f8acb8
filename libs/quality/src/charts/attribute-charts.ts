import type { Rate } from '../rate';
import { mean, sum } from '../sums';
import { nothing, WIDTH } from './control-chart';
import type { ChartKind, ChartOptions, ControlChart } from './control-chart';
import { movingRangeSigma } from './moving-range';

/** Counted units or defects of a subgroup: `of` is its units (or inspected area), `count` what was found. */
export type Subgroup = Rate;

/** How one kind of chart sees its subgroups. Its center is pooled, sum over sum: never a mean of ratios. */
type Model = {
  readonly kind: ChartKind;
  readonly value: (subgroup: Subgroup) => number;
  readonly sigma: (center: number, of: number) => number;
  readonly most: number;
};

const p: Model = {
  kind: 'p',
  value: ({ count, of }) => count / of,
  sigma: (center, of) => Math.sqrt((center * (1 - center)) / of),
  most: 1,
};
const u: Model = {
  kind: 'u',
  value: ({ count, of }) => count / of,
  sigma: (center, of) => Math.sqrt(center / of),
  most: Infinity,
};

/** Share of units with the event, subgroups of any size (NIST/SEMATECH e-Handbook 6.3.3.2). */
export const pChart = (subgroups: readonly Subgroup[], options: ChartOptions = {}): ControlChart =>
  chartOf(p, subgroups, options);

/** Number of units with the event; all subgroups have `of` units. */
export const npChart = (counts: readonly number[], of: number, options: ChartOptions = {}): ControlChart => {
  const np: Model = {
    kind: 'np',
    value: ({ count }) => count,
    sigma: (center) => Math.sqrt(center * (1 - center / of)),
    most: of,
  };
  return chartOf(np, asSubgroups(counts), options);
};

/** Number of defects in equal areas of opportunity (NIST/SEMATECH e-Handbook 6.3.3.1). */
export const cChart = (counts: readonly number[], options: ChartOptions = {}): ControlChart =>
  chartOf(
    { kind: 'c', value: ({ count }) => count, sigma: (center) => Math.sqrt(center), most: Infinity },
    asSubgroups(counts),
    options,
  );

/** Defects per unit, subgroups of any size. */
export const uChart = (subgroups: readonly Subgroup[], options: ChartOptions = {}): ControlChart =>
  chartOf(u, subgroups, options);

/** Laney's p' (2002): limits as wide as the subgroups really vary, where chance alone would be too narrow. */
export const laneyPChart = (
  subgroups: readonly Subgroup[],
  options: ChartOptions & LaneyOptions = {},
): ControlChart => inflated({ ...p, kind: 'p-prime' }, subgroups, options);

/** Laney's u'. */
export const laneyUChart = (
  subgroups: readonly Subgroup[],
  options: ChartOptions & LaneyOptions = {},
): ControlChart => inflated({ ...u, kind: 'u-prime' }, subgroups, options);

export type LaneyOptions = {
  /** Keep the limits at least as wide as chance has it. Off, as Laney published it: the factor may be below 1. */
  readonly neverNarrower?: boolean;
};

const asSubgroups = (counts: readonly number[]): readonly Subgroup[] =>
  counts.map((count) => ({ count, of: 1 }));

const centerOf = (subgroups: readonly Subgroup[], { baseline }: ChartOptions): number => {
  const counted = baseline === undefined ? subgroups : subgroups.filter((_, at) => baseline.includes(at));
  const units = sum(counted.map(({ of }) => of));
  return units === 0 ? 0 : sum(counted.map(({ count, of }) => (of === 0 ? 0 : count))) / units;
};

const chartOf = (
  model: Model,
  subgroups: readonly Subgroup[],
  options: ChartOptions,
  inflation = 1,
): ControlChart => {
  const center = centerOf(subgroups, options);
  const width = options.width ?? WIDTH;
  const points = subgroups.map((subgroup) => {
    if (subgroup.of === 0) return nothing;
    const sigma = inflation * model.sigma(center, subgroup.of);
    return {
      value: model.value(subgroup),
      sigma,
      lower: Math.max(0, center - width * sigma),
      upper: Math.min(model.most, center + width * sigma),
    };
  });
  return { kind: model.kind, center, inflation, points };
};

const inflated = (
  model: Model,
  subgroups: readonly Subgroup[],
  options: ChartOptions & LaneyOptions,
): ControlChart => {
  const { baseline } = options;
  const counted = baseline === undefined ? subgroups : subgroups.filter((_, at) => baseline.includes(at));
  const spread = movingRangeSigma(laneyScores(model, counted, centerOf(subgroups, options)));
  return chartOf(model, subgroups, options, options.neverNarrower === true ? Math.max(1, spread) : spread);
};

const laneyScores = (model: Model, subgroups: readonly Subgroup[], center: number): readonly number[] =>
  subgroups
    .filter(({ of }) => of > 0)
    .map((subgroup) => (model.value(subgroup) - center) / model.sigma(center, subgroup.of));

/**
 * Do the counts vary more than chance has it? Statistic (k - 1) s^2 / expected variance, chi-square on k - 1
 * (R package qcc, qcc.overdispersion.test). Equal sizes: of a binomial give `size`, of a Poisson none.
 */
export const countDispersion = (
  counts: readonly number[],
  size?: number,
): { readonly ratio: number; readonly statistic: number; readonly degreesOfFreedom: number } => {
  const middle = mean(counts);
  const seen = sum(counts.map((count) => Math.pow(count - middle, 2))) / (counts.length - 1);
  const expected = size === undefined ? middle : middle * (1 - middle / size);
  const degreesOfFreedom = counts.length - 1;
  return { ratio: seen / expected, statistic: (degreesOfFreedom * seen) / expected, degreesOfFreedom };
};
