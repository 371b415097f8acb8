import type { Rational } from './decimal';

/** A unit a plant may enter values in: UCUM code, the kind of quantity, exact factor (and offset) to the kind's base. */
export type MeasureUnit = {
  readonly code: string;
  readonly kind: string;
  readonly factor: Rational;
  readonly offset: Rational;
  /** As people write it: `in`, `psi`. */
  readonly symbol: string;
};

export declare const measureUnit: (code: string) => MeasureUnit | undefined;
/** The value in its kind's base unit, exact. Undefined when the unit is unknown. */
export declare const inBase: (decimal: string, code: string) => Rational | undefined;
