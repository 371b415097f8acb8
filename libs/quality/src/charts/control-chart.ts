/**
 * A Shewhart chart: points in time order, each with its own limits where the subgroups differ in size.
 * Values are shares (p), counts (np, c), counts a unit (u), or measured values; never rounded before they are compared.
 */
export type ControlChart = {
  readonly kind: ChartKind;
  readonly center: number;
  /** Laney's factor on the limits: 1 where the counts vary as much as chance has it. */
  readonly inflation: number;
  readonly points: readonly ChartPoint[];
};

export const CHART_KINDS = ['p', 'np', 'c', 'u', 'p-prime', 'u-prime', 'individuals', 'range'] as const;
export type ChartKind = (typeof CHART_KINDS)[number];

/** Null throughout for a subgroup of no units: there is nothing to plot, and it counts for nothing. */
export type ChartPoint = {
  readonly value: number | null;
  /** One standard deviation at this point's size, Laney's factor included. */
  readonly sigma: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
};

export type ChartOptions = {
  /** Limits stand this many standard deviations from the center: 3 unless an alarm budget says otherwise. */
  readonly width?: number;
  /** The points, from 0, that center and spread come from; all unless a person set a baseline. */
  readonly baseline?: readonly number[];
};

export const WIDTH = 3;

export const nothing: ChartPoint = { value: null, sigma: null, lower: null, upper: null };

/** A point on its limit is inside. What rounding adds, some parts in 10^16, must not push it out. */
const BEYOND = 1e-12;

export const isBeyond = ({ value, lower, upper }: ChartPoint): boolean => {
  if (value === null || lower === null || upper === null) return false;
  const slack = BEYOND * Math.max(1, Math.abs(upper), Math.abs(lower));
  return value > upper + slack || value < lower - slack;
};

/** Indices, from 0. */
export const beyondLimits = ({ points }: ControlChart): readonly number[] =>
  points.flatMap((point, at) => (isBeyond(point) ? [at] : []));

/** Distances from the center in standard deviations, as the run rules take them; null where nothing is plotted. */
export const standardised = ({ center, points }: ControlChart): readonly (number | null)[] =>
  points.map(({ value, sigma }) =>
    value === null || sigma === null || sigma === 0 ? null : (value - center) / sigma,
  );
