/** Charts with a memory: they see small, lasting changes that a Shewhart chart sees late. */

export type Ewma = {
  readonly values: readonly number[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];
};

/**
 * Exponentially weighted moving average (Roberts 1959; NIST/SEMATECH e-Handbook 6.3.2.4). Limits widen to a steady state:
 * `steady` takes that width for every point, as the handbook does. The statistic goes on after a signal.
 */
export const ewma = (
  values: readonly number[],
  design: {
    readonly lambda: number;
    readonly target: number;
    readonly sigma: number;
    readonly width: number;
    readonly steady?: boolean;
  },
): Ewma => {
  const { lambda, target, sigma, width, steady = false } = design;
  let last = target;
  const weighted = values.map((value) => (last = lambda * value + (1 - lambda) * last));
  const reach = (at: number): number =>
    width *
    sigma *
    Math.sqrt((lambda / (2 - lambda)) * (steady ? 1 : 1 - Math.pow(1 - lambda, 2 * (at + 1))));
  return {
    values: weighted,
    lower: values.map((_, at) => target - reach(at)),
    upper: values.map((_, at) => target + reach(at)),
  };
};

export type Cusum = { readonly high: readonly number[]; readonly low: readonly number[] };

/**
 * Tabular two-sided CUSUM (Page 1954; NIST/SEMATECH e-Handbook 6.3.2.3). Slack k in the units of the data.
 * A signal is strictly beyond h; the statistic is not reset after it.
 */
export const cusum = (
  values: readonly number[],
  { target, slack }: { readonly target: number; readonly slack: number },
): Cusum => {
  let [high, low] = [0, 0];
  const steps = values.map((value) => {
    high = Math.max(0, high + value - (target + slack));
    low = Math.max(0, low + target - slack - value);
    return { high, low };
  });
  return { high: steps.map((step) => step.high), low: steps.map((step) => step.low) };
};

/** Indices, from 0, strictly beyond. */
export const above = (values: readonly number[], limit: number): readonly number[] =>
  values.flatMap((value, at) => (value > limit ? [at] : []));
