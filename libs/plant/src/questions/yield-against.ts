import type { AnswerOf } from '@libs/contracts';
import { benjaminiHochberg, fisherExact, share } from '@libs/quality';
import type { Rate } from '@libs/quality';

type Against = NonNullable<AnswerOf<'yield'>['rows'][number]['against']>;

/** Of the stations named as changed, at most this share is named wrongly, on average. */
const FALSE_DISCOVERY = 0.05;

/**
 * Each station beside itself in another span. Sixteen stations compared at once would by chance alone show one that
 * "changed" nearly every time, so the tests are taken together.
 */
export const againstOf = (now: readonly Rate[], before: readonly Rate[]): readonly Against[] => {
  const pairs = now.map((rate, at) => ({ rate, other: before[at] ?? { count: 0, of: 0 } }));
  const tested = benjaminiHochberg(pairs.map(({ rate, other }) => chance(rate, other)));
  return pairs.map(({ rate, other }, at) => ({
    left: other.of,
    clean: other.count,
    firstPass: share(other),
    now: verdict(rate, other, tested[at] ?? 1),
  }));
};

const chance = (rate: Rate, other: Rate): number =>
  rate.of === 0 || other.of === 0
    ? 1
    : fisherExact([
        [rate.count, rate.of - rate.count],
        [other.count, other.of - other.count],
      ]);

const verdict = (rate: Rate, other: Rate, adjusted: number): Against['now'] => {
  if (adjusted > FALSE_DISCOVERY) return 'not-told-apart';
  return (share(rate) ?? 0) > (share(other) ?? 0) ? 'better' : 'worse';
};
