import type { Days } from '@libs/views';
import type { Span } from '../told';
import type { Asked } from './asked';

const DAY_MS = 86_400_000;
/** A quarter: enough sections for an interval that says something, few enough that it is still the same plant. */
const SPAN_DAYS = 90;

/** What was asked for; else the 90 days up to the last day on record. */
export const daysOf = async ({ from, to }: Span, { views, clock }: Asked): Promise<Days> => {
  const last = to ?? (await views.lastDay()) ?? dayAt(clock(), 'UTC');
  return { from: from ?? addDays(last, -SPAN_DAYS), to: last };
};

export const addDays = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);

/** The Monday of its ISO week. */
export const mondayOf = (day: string): string =>
  addDays(day, -((new Date(`${day}T00:00:00Z`).getUTCDay() + 6) % 7));

/** The ISO weeks of a span, Monday first, cut to the span at both ends. */
export const weeksOf = ({ from, to }: Days): readonly Days[] => {
  const weeks: Days[] = [];
  for (let monday = mondayOf(from); monday <= to; monday = addDays(monday, 7)) {
    const sunday = addDays(monday, 6);
    weeks.push({ from: monday < from ? from : monday, to: sunday > to ? to : sunday });
  }
  return weeks;
};

/** The calendar day at the plant. */
export const dayAt = (ms: number, timeZone: string): string =>
  new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' }).format(
    ms,
  );
