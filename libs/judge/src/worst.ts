import type { Rational } from '@libs/kernel';
import { compare, plus } from '@libs/kernel';
import type { RecordedValue } from './entry';
import type { Test } from './plan';
import { baseNumber, limitInBase } from './reading';

/**
 * Of readings that fail a test, the one furthest beyond its limit; the first where "further" means nothing, as for
 * text or a list.
 */
export const worstOf = (
  test: Test,
  failing: readonly RecordedValue[],
  plannedUnit: string | null,
): RecordedValue | undefined =>
  failing.reduce((worst, reading) => {
    const a = shortfall(test, reading, plannedUnit);
    const b = worst === undefined ? undefined : shortfall(test, worst, plannedUnit);
    return a !== undefined && b !== undefined && compare(a, b) > 0 ? reading : worst;
  }, failing[0]);

/** How far a reading lies beyond the limit it fails, in base units. */
const shortfall = (test: Test, reading: RecordedValue, plannedUnit: string | null): Rational | undefined => {
  const number = baseNumber(reading);
  if (number === undefined) return undefined;
  const beyond = (limit: string): Rational => size(minus(number, limitInBase(limit, plannedUnit)));
  switch (test.is) {
    case 'compare':
      return beyond(test.number);
    case 'interval': {
      const [below, above] = [beyond(test.from), beyond(test.to)];
      return compare(below, above) < 0 ? below : above;
    }
    default:
      return undefined;
  }
};

const minus = (a: Rational, b: Rational): Rational => plus(a, { num: -b.num, den: b.den });
const size = ({ num, den }: Rational): Rational => ({ num: num < 0n ? -num : num, den });
