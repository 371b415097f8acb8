import { WIDTH } from './control-chart';

/**
 * For rare events: good units between one defective unit and the next (Benneyan 2001). Few points, none of them a row
 * of zeros. A point above its limit is a long good run; what gets worse shows as short gaps, which a lower limit of 0
 * cannot see: read it beside the unit-by-unit chart.
 */
export type GapChart = {
  readonly center: number;
  readonly lower: number;
  readonly upper: number;
  readonly gaps: readonly number[];
};

/** Good units before each defective one, in order; what follows the last is not yet a gap. */
export const gapsBetween = (defective: readonly boolean[]): readonly number[] => {
  const gaps: number[] = [];
  let run = 0;
  for (const bad of defective) {
    if (bad) gaps.push(run);
    run = bad ? 0 : run + 1;
  }
  return gaps;
};

/** A geometric count of mean m has standard deviation sqrt(m (m + 1)). */
export const gChart = (gaps: readonly number[], width: number = WIDTH): GapChart => {
  const center = gaps.length === 0 ? 0 : gaps.reduce((total, gap) => total + gap, 0) / gaps.length;
  const reach = width * Math.sqrt(center * (center + 1));
  return { center, lower: Math.max(0, center - reach), upper: center + reach, gaps };
};

/** The most good units in a row, and the fewest, that chance would pass with at most `tail` on each side. */
export const gapLimits = (
  share: number,
  tail: number,
): { readonly lower: number; readonly upper: number } => ({
  lower: Math.max(0, Math.ceil(Math.log(1 - tail) / Math.log(1 - share)) - 1),
  upper: Math.max(0, Math.ceil(Math.log(tail) / Math.log(1 - share)) - 1),
});
