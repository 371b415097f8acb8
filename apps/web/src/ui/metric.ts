import { converted, inchesAsFraction, measureUnit } from '@libs/kernel';
/** The unit a tape measure is read in. */
export const isInches = (unit: string | null): boolean => unit === '[in_i]';

/** For each unit of the plant, the metric one a reader may ask for beside it. */
const METRIC: Readonly<Record<string, string>> = {
  '[in_i]': 'mm',
  '[ft_i]': 'm',
  '[mil_i]': 'mm',
  '[sft_i]': 'm2',
  '[psi]': 'kPa',
  "[in_i'H2O]": 'Pa',
  '[lbf_av]': 'N',
  '[lbf_av].[ft_i]': 'N.m',
  '[lb_av]': 'kg',
  '[gal_us]': 'L',
  '[gal_us]/min': 'L/min',
  '[in_i]/[ft_i]': 'mm/m',
  '[degF]': 'Cel',
};
/** More digits than any tape or gauge on a floor can show. */
const DIGITS = 4;

const symbolOf = (unit: string): string => measureUnit(unit)?.symbol ?? unit;

/** `31.75 mm` for 1.25 in; null where there is nothing to convert. */
export const inMetric = (decimal: string, unit: string | null, locale: string): string | null => {
  const target = METRIC[unit ?? ''];
  if (unit === null || target === undefined) return null;
  const exact = converted(decimal, unit, target);
  if (exact === undefined) return null;
  const number = Number(exact.num) / Number(exact.den);
  return `${new Intl.NumberFormat(locale, { maximumSignificantDigits: DIGITS }).format(number)} ${symbolOf(target)}`;
};

/** As it is read off a tape or gauge, its unit always beside it. */
export const asRead = (decimal: string, unit: string | null): string => {
  const number = isInches(unit) ? inchesAsFraction(decimal) : decimal;
  const symbol = unit === null ? '' : symbolOf(unit);
  return symbol === '' ? number : `${number} ${symbol}`;
};
