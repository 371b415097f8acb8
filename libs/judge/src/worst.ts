import type { Rational } from '@libs/kernel';
import { compare } from '@libs/kernel';
import type { RecordedValue } from './entry';
import type { Test } from './plan';
import { baseNumber } from './reading';

/** Of readings that fail a test, the one that is furthest on the failing side; the first where sides mean nothing. */
export const worstOf = (test: Test, failing: readonly RecordedValue[]): RecordedValue | undefined => {
  const direction = directionOf(test);
  if (direction === 0) return failing[0];

  return failing.reduce(
    (worst, reading) => (isWorse(reading, worst, direction) ? reading : worst),
    failing[0],
  );
};

/** A lower limit fails downwards, an upper one upwards. */
const directionOf = (test: Test): number => {
  if (test.is !== 'compare' || test.op === '=') return 0;
  return test.op === '<' || test.op === '<=' ? 1 : -1;
};

const isWorse = (reading: RecordedValue, than: RecordedValue | undefined, direction: number): boolean => {
  const a: Rational | undefined = baseNumber(reading);
  const b = than === undefined ? undefined : baseNumber(than);
  return a !== undefined && b !== undefined && compare(a, b) * direction > 0;
};
