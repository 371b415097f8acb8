/** Times as people on a floor read them: the month by name, 24 hours, and how long since. */

export const timesOf = (locale: string, zone: string | undefined, now: () => number = Date.now) => ({
  day: (instant: string): string =>
    new Intl.DateTimeFormat(locale, {
      day: 'numeric',
      month: 'short',
      year: 'numeric',
      timeZone: zone,
    }).format(new Date(instant)),
  time: (instant: string): string =>
    new Intl.DateTimeFormat(locale, {
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
      timeZone: zone,
    }).format(new Date(instant)),
  moment: (instant: string): string =>
    new Intl.DateTimeFormat(locale, {
      day: 'numeric',
      month: 'short',
      ...(yearOf(instant, zone) === yearOf(now(), zone) ? {} : { year: 'numeric' }),
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
      timeZone: zone,
    }).format(new Date(instant)),
});

/** A moment of another year says which. */
const yearOf = (instant: string | number, zone: string | undefined): string =>
  new Intl.DateTimeFormat('en-US', { year: 'numeric', timeZone: zone }).format(new Date(instant));

const MINUTE_MS = 60_000;

/** How long, in the two largest units that say something: `3 h 20 min`, `2 d 4 h`. */
export const lengthOf = (fromMs: number, toMs: number): { days: number; hours: number; minutes: number } => {
  const minutes = Math.max(0, Math.floor((toMs - fromMs) / MINUTE_MS));
  return { days: Math.floor(minutes / 1440), hours: Math.floor(minutes / 60) % 24, minutes: minutes % 60 };
};
