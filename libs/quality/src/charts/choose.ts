import { chiSquareUpperTail } from '../distributions';
import { sum } from '../sums';
import type { Subgroup } from './attribute-charts';

/** The right chart for the data, and why: a code that the screen puts into words. */
export type ChartChoice = {
  readonly kind: 'p' | 'p-prime' | 'u' | 'u-prime' | 'g';
  readonly why: 'counts-as-chance' | 'varies-more-than-chance' | 'too-few-expected' | 'too-few-points';
};

/** Below this many expected a subgroup, most points are 0 and limits mean little (common practice, no published source). */
const FEWEST_EXPECTED = 1;
/** Fewer subgroups tell nothing of their spread. */
const FEWEST_SUBGROUPS = 12;
/** A wrong choice for Laney's chart costs little, so this is strict. */
const SIGNIFICANT = 0.01;

/** `shares`: units with or without (p); else defects, of which a unit can have several (u). */
export const chooseChart = (subgroups: readonly Subgroup[], counted: 'shares' | 'defects'): ChartChoice => {
  const plain = counted === 'shares' ? 'p' : 'u';
  const filled = subgroups.filter(({ of }) => of > 0);
  const found = sum(filled.map(({ count }) => count));
  if (filled.length < FEWEST_SUBGROUPS) return { kind: plain, why: 'too-few-points' };
  if (counted === 'shares' && found / filled.length < FEWEST_EXPECTED)
    return { kind: 'g', why: 'too-few-expected' };

  return dispersion(filled, counted) < SIGNIFICANT
    ? { kind: counted === 'shares' ? 'p-prime' : 'u-prime', why: 'varies-more-than-chance' }
    : { kind: plain, why: 'counts-as-chance' };
};

/** The chance of subgroups as unlike each other as these, were there one rate for all. */
const dispersion = (subgroups: readonly Subgroup[], counted: 'shares' | 'defects'): number => {
  const rate = sum(subgroups.map(({ count }) => count)) / sum(subgroups.map(({ of }) => of));
  const unit = counted === 'shares' ? rate * (1 - rate) : rate;
  if (unit === 0) return 1;
  const scores = subgroups.map(({ count, of }) => Math.pow(count - of * rate, 2) / (of * unit));
  return chiSquareUpperTail(sum(scores), subgroups.length - 1);
};
