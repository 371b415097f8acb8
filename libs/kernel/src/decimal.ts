/** A measured value as entered: `-?(0|[1-9]\d*)(\.\d+)?`. Kept as text; compared exactly, never as a float. */
export const DECIMAL = /^-?(?:0|[1-9]\d*)(?:\.\d+)?$/;

/** An exact rational number, denominator above 0. */
export type Rational = { readonly num: bigint; readonly den: bigint };

export const isDecimal = (text: string): boolean => DECIMAL.test(text);

/** Exact value of a decimal string. The caller has checked `isDecimal`. */
export const rationalOf = (decimal: string): Rational => {
  const dot = decimal.indexOf('.');
  if (dot < 0) return { num: BigInt(decimal), den: 1n };

  const places = decimal.length - dot - 1;
  return { num: BigInt(decimal.slice(0, dot) + decimal.slice(dot + 1)), den: tenTo(places) };
};

/** Raising is slow, and values have few places. */
const POWERS: readonly bigint[] = Array.from({ length: 20 }, (_, places) => 10n ** BigInt(places));
const tenTo = (places: number): bigint => POWERS[places] ?? 10n ** BigInt(places);

export const times = (a: Rational, b: Rational): Rational => ({ num: a.num * b.num, den: a.den * b.den });

export const plus = (a: Rational, b: Rational): Rational => ({
  num: a.num * b.den + b.num * a.den,
  den: a.den * b.den,
});

/** Negative, zero or positive as a is below, equal to or above b. */
export const compare = (a: Rational, b: Rational): number => {
  const difference = a.num * b.den - b.num * a.den;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
};
