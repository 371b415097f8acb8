import type { Rate } from '../rate';
import { sum } from '../sums';
import { chiSquareOf } from './risk';
import type { ChiSquare } from './risk';

const pooled = (groups: readonly Rate[]): { readonly of: number; readonly p: number } => {
  const of = sum(groups.map((group) => group.of));
  return { of, p: sum(groups.map((group) => group.count)) / of };
};

/** Do the shares of several groups differ at all? Pearson's chi-square. */
export const homogeneity = (groups: readonly Rate[]): ChiSquare => {
  const { p } = pooled(groups);
  const terms = groups.map(({ count, of }) => Math.pow(count - of * p, 2) / (of * p * (1 - p)));
  return chiSquareOf(sum(terms), groups.length - 1);
};

/** Do the shares rise or fall with the scores of their groups (Cochran 1954, Armitage 1955)? */
export const trendInProportions = (
  groups: readonly Rate[],
  scores: readonly number[] = groups.map((_, at) => at + 1),
): ChiSquare => {
  const { of, p } = pooled(groups);
  const score = (at: number): number => scores[at] ?? 0;
  const middle = sum(groups.map((group, at) => group.of * score(at))) / of;
  const slope = sum(groups.map(({ count, of: size }, at) => (count - size * p) * (score(at) - middle)));
  const spread = sum(groups.map((group, at) => group.of * Math.pow(score(at) - middle, 2)));
  return chiSquareOf((slope * slope) / (p * (1 - p) * spread), 1);
};
