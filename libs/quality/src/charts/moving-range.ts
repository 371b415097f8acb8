import { mean } from '../sums';
import { nothing, WIDTH } from './control-chart';
import type { ChartOptions, ControlChart } from './control-chart';

/** The tabled d2 for two neighbours; its exact value is 2 / sqrt(pi) = 1.12838. The table is what published examples use. */
export const D2_OF_TWO = 1.128;
/** The tabled D4 for two neighbours: upper limit of the moving range over its mean. */
export const D4_OF_TWO = 3.267;

export const meanMovingRange = (values: readonly number[]): number =>
  values.length < 2 ? 0 : mean(values.slice(1).map((value, at) => Math.abs(value - (values[at] ?? value))));

/** Standard deviation from how far neighbours are apart: a slow drift does not widen it. */
export const movingRangeSigma = (values: readonly number[], d2 = D2_OF_TWO): number =>
  meanMovingRange(values) / d2;

/** One value a point (NIST/SEMATECH e-Handbook 6.3.2.2). A null is a point that was not measured. */
export const individualsChart = (
  values: readonly (number | null)[],
  options: ChartOptions & { readonly d2?: number } = {},
): ControlChart => {
  const { baseline } = options;
  const counted = values.flatMap((value, at) =>
    value === null || (baseline !== undefined && !baseline.includes(at)) ? [] : [value],
  );
  const center = counted.length === 0 ? 0 : mean(counted);
  const sigma = movingRangeSigma(counted, options.d2);
  const reach = (options.width ?? WIDTH) * sigma;
  return {
    kind: 'individuals',
    center,
    inflation: 1,
    points: values.map((value) =>
      value === null ? nothing : { value, sigma, lower: center - reach, upper: center + reach },
    ),
  };
};

/** Ranges of subgroups, or moving ranges, between D3 and D4 times their mean (ISO 7870-2). */
export const rangeChart = (
  ranges: readonly number[],
  { lower, upper }: { readonly lower: number; readonly upper: number } = { lower: 0, upper: D4_OF_TWO },
): ControlChart => {
  const center = mean(ranges);
  return {
    kind: 'range',
    center,
    inflation: 1,
    points: ranges.map((value) => ({
      value,
      sigma: (center * (upper - 1)) / WIDTH,
      lower: center * lower,
      upper: center * upper,
    })),
  };
};
