import { isDecimal, measureUnit, rationalOf } from '@libs/kernel';
import type { PlannedValue, Test } from './plan';

/** Quantities that have no less than none of them. Degrees, voltages and currents have a side to either hand. */
const NEVER_BELOW_ZERO: ReadonlySet<string> = new Set([
  'area',
  'flow',
  'force',
  'frequency',
  'illuminance',
  'length',
  'mass',
  'pressure',
  'resistance',
  'time',
  'torque',
  'volume',
]);

type Planned = Pick<PlannedValue, 'kind' | 'unit' | 'test'>;

/**
 * A length of -3 in is a slip of the finger, not a reading, and would meet `at most 12 in`. Where the rulebook itself
 * names a limit below zero (a deviation, a vacuum), there it may be.
 */
export const isBelowZero = ({ kind, unit, test }: Planned, value: string): boolean =>
  isDecimal(value) &&
  rationalOf(value).num < 0n &&
  (kind === 'count' || NEVER_BELOW_ZERO.has(measureUnit(unit ?? '')?.kind ?? '')) &&
  !namesBelowZero(test);

const namesBelowZero = (test: Test): boolean => {
  switch (test.is) {
    case 'compare':
      return test.number.startsWith('-');
    case 'interval':
      return test.from.startsWith('-') || test.to.startsWith('-');
    case 'anyOf':
      return test.tests.some(namesBelowZero);
    case 'not':
      return namesBelowZero(test.test);
    default:
      return false;
  }
};
