import type { Rational } from './decimal';
import { isDecimal, plus, rationalOf, times } from './decimal';
import type { MeasureUnit } from './plant-units';
import { plantUnits } from './plant-units';

export type { MeasureUnit } from './plant-units';

const UNITS: ReadonlyMap<string, MeasureUnit> = new Map(plantUnits.map((unit) => [unit.code, unit]));

export const measureUnit = (code: string): MeasureUnit | undefined => UNITS.get(code);

export const measureUnits = (): readonly MeasureUnit[] => plantUnits;

/** The value in its kind's base unit, exact. Undefined when the unit is unknown or the text is no decimal. */
export const inBase = (decimal: string, code: string): Rational | undefined => {
  const unit = UNITS.get(code);
  if (unit === undefined || !isDecimal(decimal)) return undefined;

  return plus(times(rationalOf(decimal), unit.factor), unit.offset);
};

/** Both name the same kind of quantity, so that a value in one can be told in the other. */
export const sameKind = (a: string, b: string): boolean => {
  const unit = UNITS.get(a);
  return unit !== undefined && unit.kind === UNITS.get(b)?.kind;
};

/** The same quantity in another unit, exact. Undefined when the units are of different kinds or unknown. */
export const converted = (decimal: string, from: string, to: string): Rational | undefined => {
  const target = UNITS.get(to);
  const base = inBase(decimal, from);
  if (target === undefined || base === undefined || !sameKind(from, to)) return undefined;

  const shifted = plus(base, { num: -target.offset.num, den: target.offset.den });
  return lowest({ num: shifted.num * target.factor.den, den: shifted.den * target.factor.num });
};

/** The same number with the smallest denominator. */
export const lowest = ({ num, den }: Rational): Rational => {
  const divisor = commonDivisor(num < 0n ? -num : num, den);
  return { num: num / divisor, den: den / divisor };
};

const commonDivisor = (a: bigint, b: bigint): bigint => (b === 0n ? a : commonDivisor(b, a % b));
