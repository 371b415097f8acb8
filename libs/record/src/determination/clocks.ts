import { addDays, addMonths, dayNumber } from './floor-days';

/**
 * The clocks of 24 CFR part 3282 subpart I, as the plant reads them. The regulation and counsel decide, not this table:
 * rows marked `unverified` were not read in the regulation's own text.
 */
export type ClockRow = {
  readonly clock: string;
  readonly section: string;
  readonly days: number;
  readonly verified: boolean;
};

export const CLOCKS = [
  { clock: 'initial-determination', section: '3282.404(a)(1)', days: 30, verified: true },
  { clock: 'notify-at-once', section: '3282.404(a)(2)', days: 0, verified: true },
  { clock: 'class-determination', section: '3282.404(b)(1)', days: 20, verified: true },
  { clock: 'plan', section: '3282.408(a)', days: 20, verified: true },
  { clock: 'one-home', section: '3282.407(a)(2)', days: 20, verified: true },
  { clock: 'corrections', section: '3282.410(b)', days: 60, verified: true },
  { clock: 'notices', section: '3282.410(a)(1)', days: 0, verified: true },
  { clock: 'notice-copy', section: '3282.410(a)(2)', days: 0, verified: true },
  { clock: 'order-hazard', section: '3282.413(c)(2)(i)', days: 30, verified: true },
  { clock: 'order-defect', section: '3282.413(c)(2)(ii)', days: 60, verified: true },
  { clock: 'appeal', section: '3282.413(d)', days: 10, verified: true },
  { clock: 'waiver-class', section: '3282.413(f)(1)(ii)', days: 60, verified: true },
  { clock: 'replacement', section: '3282.414(a)', days: 60, verified: true },
  { clock: 'depreciation', section: '3282.414(a)(2)', days: 365, verified: true },
  { clock: 'report', section: '3282.417(a)', days: 30, verified: true },
  { clock: 'service-review', section: '3282.416(a)(4)', days: 31, verified: true },
  { clock: 'waiver-request', section: '3282.407(c)', days: 20, verified: false },
  { clock: 'waiver-correction', section: '3282.407(c)', days: 60, verified: false },
  { clock: 'views', section: '3282.412', days: 15, verified: false },
  { clock: 'views-hazard', section: '3282.412', days: 5, verified: false },
] as const satisfies readonly ClockRow[];
export type ClockName = (typeof CLOCKS)[number]['clock'];

/** 24 CFR 26.16(a) governs by way of 3282.9; how it treats days off is the plant's to set, with counsel. */
export type CountingRule = {
  /** `next-working-day`: a last day that is a day off moves on to the next that is none. `as-it-falls`: it stays. */
  readonly lastDay: 'next-working-day' | 'as-it-falls';
  /** Days of the week that are off, 0 for Sunday. */
  readonly daysOff: readonly number[];
  /** `2026-12-25`. */
  readonly holidays: readonly string[];
  /** So many days before it is due, it is warned of. */
  readonly warnDays: number;
};

export const COUNTING: CountingRule = {
  lastDay: 'as-it-falls',
  daysOff: [0, 6],
  holidays: [],
  warnDays: 7,
};

/**
 * The day it is due: the day of the start does not count. Calendar days have no clock time in them, so that neither a
 * time-zone change nor daylight saving moves one. A month and a year count by the calendar, with the last day of a
 * shorter month standing in for one it does not have.
 */
export const dueOn = (clock: ClockName, start: string, rule: CountingRule = COUNTING): string => {
  const { days } = rowOf(clock);
  const months = BY_MONTHS.get(clock);
  const last = months === undefined ? addDays(start, days) : addMonths(start, months);
  return rule.lastDay === 'as-it-falls' ? last : nextWorkingDay(last, rule);
};

const BY_MONTHS: ReadonlyMap<ClockName, number> = new Map([
  ['depreciation', 12],
  ['service-review', 1],
]);

export const rowOf = (clock: ClockName): ClockRow => {
  const row = CLOCKS.find((one) => one.clock === clock);
  return row ?? CLOCKS[0];
};

const nextWorkingDay = (day: string, rule: CountingRule): string => {
  /** No run of days off is longer; a calendar in which every day is off must not go on for ever. */
  for (let moved = 0; moved < LONGEST_RUN_OFF; moved++) {
    const one = addDays(day, moved);
    if (!isOff(one, rule)) return one;
  }
  return day;
};
const LONGEST_RUN_OFF = 31;

const isOff = (day: string, { daysOff, holidays }: CountingRule): boolean =>
  holidays.includes(day) || daysOff.includes((((dayNumber(day) + THURSDAY) % 7) + 7) % 7);
/** 1970-01-01 was a Thursday. */
const THURSDAY = 4;
