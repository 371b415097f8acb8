import type { Rational } from '@libs/kernel';
import { compare, inBase, isDecimal, rationalOf, sameKind } from '@libs/kernel';
import type { RecordedValue } from './entry';
import type { PlannedValue, Test, ValueKind } from './plan';

/**
 * Whether a value meets a test, exactly. `>= 7` is never true of text, nor of a length when a pressure is
 * planned, and neither is `not(>= 7)`: what cannot be compared meets no test but the one that asks for any value.
 */
export const passes = (test: Test, value: string, unit: string | null, plannedUnit: string | null): boolean =>
  verdict(test, { value, unit, plannedUnit }) === true;

type Given = { readonly value: string; readonly unit: string | null; readonly plannedUnit: string | null };

/** Undefined: value and test cannot be compared. */
const verdict = (test: Test, given: Given): boolean | undefined => {
  switch (test.is) {
    case 'any':
      return true;
    case 'text':
      return given.value === test.text;
    case 'boolean':
      return (test.boolean ? ['true', 'yes'] : ['false', 'no']).includes(given.value);
    case 'anyOf':
      return anyVerdict(test.tests.map((one) => verdict(one, given)));
    case 'not': {
      const inner = verdict(test.test, given);
      return inner === undefined ? undefined : !inner;
    }
    case 'day':
    case 'days':
      return dayVerdict(test, given);
    default:
      return numberVerdict(test, given);
  }
};

/** Days compare as text. */
const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

type DayTest = Extract<Test, { is: 'day' | 'days' }>;

const dayVerdict = (test: DayTest, { value, unit }: Given): boolean | undefined => {
  if (unit !== null || !isCalendarDay(value)) return undefined;
  return test.is === 'day' ? holds(order(value, test.day), test.op) : isBetween(value, test);
};

const isBetween = (
  day: string,
  { from, fromClosed, to, toClosed }: Extract<Test, { is: 'days' }>,
): boolean => {
  const [above, below] = [order(day, from), order(to, day)];
  return (fromClosed ? above >= 0 : above > 0) && (toClosed ? below >= 0 : below > 0);
};

const anyVerdict = (verdicts: readonly (boolean | undefined)[]): boolean | undefined => {
  if (verdicts.includes(true)) return true;
  return verdicts.includes(undefined) ? undefined : false;
};

type NumberTest = Extract<Test, { is: 'compare' | 'interval' }>;

const numberVerdict = (test: NumberTest, { value, unit, plannedUnit }: Given): boolean | undefined => {
  const number = numberIn(value, unit, plannedUnit);
  const limit = (text: string): Rational => limitIn(text, unit, plannedUnit);
  if (number === undefined) return undefined;
  if (test.is === 'compare') return holds(compare(number, limit(test.number)), test.op);

  const above = compare(number, limit(test.from));
  const below = compare(limit(test.to), number);
  return (test.fromClosed ? above >= 0 : above > 0) && (test.toClosed ? below >= 0 : below > 0);
};

/** Whether `a op b` holds, told by how a compares with b. */
export const holds = (comparison: number, op: '<' | '<=' | '>' | '>=' | '='): boolean => {
  switch (op) {
    case '<':
      return comparison < 0;
    case '<=':
      return comparison <= 0;
    case '>':
      return comparison > 0;
    case '>=':
      return comparison >= 0;
    case '=':
      return comparison === 0;
  }
};

/** Same unit: compared as written. Another of the same kind: both in the kind's base unit. */
const numberIn = (value: string, unit: string | null, plannedUnit: string | null): Rational | undefined => {
  if (!isDecimal(value)) return undefined;
  if (isSameUnit(unit, plannedUnit)) return rationalOf(value);
  if (unit === null || plannedUnit === null || !sameKind(unit, plannedUnit)) return undefined;
  return inBase(value, unit);
};

const limitIn = (text: string, unit: string | null, plannedUnit: string | null): Rational =>
  isSameUnit(unit, plannedUnit)
    ? kept(AS_WRITTEN, text, () => rationalOf(text))
    : limitInBase(text, plannedUnit);

/** A limit of the plan in its kind's base unit. */
export const limitInBase = (text: string, plannedUnit: string | null): Rational =>
  kept(IN_BASE, `${text} ${plannedUnit ?? ''}`, () => baseLimit(text, plannedUnit));

const baseLimit = (text: string, plannedUnit: string | null): Rational =>
  (plannedUnit === null ? undefined : inBase(text, plannedUnit)) ?? rationalOf(text);

/** A plan compares with the same few hundred limits all day. Anything over the bound is worked out each time. */
const MOST_KEPT = 10_000;
const AS_WRITTEN = new Map<string, Rational>();
const IN_BASE = new Map<string, Rational>();

const kept = (limits: Map<string, Rational>, key: string, make: () => Rational): Rational => {
  const known = limits.get(key);
  if (known !== undefined) return known;

  const made = make();
  if (limits.size < MOST_KEPT) limits.set(key, made);
  return made;
};

/** Counts are counts, with or without the unit one. */
const isSameUnit = (unit: string | null, plannedUnit: string | null): boolean =>
  unit === plannedUnit || (isOne(unit) && isOne(plannedUnit));
const isOne = (unit: string | null): boolean => unit === null || unit === '1';

/** Whether the value is of the kind planned at all: a decimal in a unit of the right kind, a yes or no, a day. */
export const isOfKind = (planned: PlannedValue, value: RecordedValue): boolean =>
  KINDS[planned.kind](value, planned);

const isNumber = ({ value, unit }: RecordedValue, planned: PlannedValue): boolean =>
  numberIn(value, unit, planned.unit) !== undefined;
const isText = ({ value, unit }: RecordedValue): boolean => unit === null && value.trim() !== '';

const KINDS: { readonly [kind in ValueKind]: (value: RecordedValue, planned: PlannedValue) => boolean } = {
  measure: isNumber,
  count: (value, planned) => WHOLE.test(value.value) && isNumber(value, planned),
  'yes-no': ({ value, unit }) => unit === null && (value === 'yes' || value === 'no'),
  date: ({ value, unit }) => unit === null && isCalendarDay(value),
  choice: isText,
  text: isText,
  // Worked out from others, never given.
  derived: () => false,
};

const WHOLE = /^(?:0|[1-9]\d*)$/;
const DAY = /^(\d{4})-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;
const LONG_MONTHS = [1, 3, 5, 7, 8, 10, 12];

/** A day there is: `2026-02-30` is none. */
export const isCalendarDay = (text: string): boolean => {
  const [, year, month, day] = (DAY.exec(text) ?? []).map(Number);
  return year !== undefined && month !== undefined && day !== undefined && day <= daysIn(year, month);
};

const daysIn = (year: number, month: number): number => {
  if (month !== 2) return LONG_MONTHS.includes(month) ? 31 : 30;
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
};

/** The value in its kind's base unit; a count as it is. Undefined for what is no number. */
export const baseNumber = ({ value, unit }: RecordedValue): Rational | undefined => {
  if (!isDecimal(value)) return undefined;
  return unit === null ? rationalOf(value) : inBase(value, unit);
};
