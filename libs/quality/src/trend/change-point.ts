import { mean, runningSums, sum } from '../sums';

/** `last`: index, from 0, of the last value before the change. */
export type MeanChange = {
  readonly last: number;
  readonly before: number;
  readonly after: number;
  /** Squared distances from both means: what the change leaves unexplained. */
  readonly unexplained: number;
};

/** The one change of mean that explains most, by least squares; null for fewer than two values. */
export const meanChange = (values: readonly number[]): MeanChange | null => {
  let best: MeanChange | null = null;
  for (let last = 0; last < values.length - 1; last += 1) {
    const [first, second] = [values.slice(0, last + 1), values.slice(last + 1)];
    const [before, after] = [mean(first), mean(second)];
    const unexplained = squares(first, before) + squares(second, after);
    if (best === null || unexplained < best.unexplained) best = { last, before, after, unexplained };
  }
  return best;
};

/** Pettitt's test (1979), by ranks: no assumption on how values scatter. `p` is approximate. */
export const pettitt = (
  values: readonly number[],
): { readonly last: number; readonly statistic: number; readonly p: number } => {
  const n = values.length;
  const lead = values.map((one) => sum(values.map((other) => Math.sign(one - other))));
  const sizes = runningSums(lead).map(Math.abs);
  const statistic = Math.max(...sizes);
  const p = 2 * Math.exp((-6 * statistic * statistic) / (n * n * n + n * n));
  return { last: sizes.indexOf(statistic), statistic, p: Math.min(1, p) };
};

const squares = (values: readonly number[], middle: number): number =>
  sum(values.map((value) => Math.pow(value - middle, 2)));
