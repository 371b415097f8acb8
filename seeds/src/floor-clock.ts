const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/** How far the zone's wall clock is ahead of UTC at this instant, in minutes. Summer time is the zone's own. */
const offsetMinutes = (zone: string, atMs: number): number => {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
  }).formatToParts(atMs);
  const part = (type: string): number => Number(parts.find((one) => one.type === type)?.value);
  const wall = Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'));
  return Math.round((wall - Math.floor(atMs / MINUTE_MS) * MINUTE_MS) / MINUTE_MS);
};

const signed = (minutes: number): string => {
  const ahead = Math.abs(minutes);
  const pair = (number: number): string => String(number).padStart(2, '0');
  return `${minutes < 0 ? '-' : '+'}${pair(Math.floor(ahead / 60))}:${pair(ahead % 60)}`;
};

export type FloorClock = {
  /** The instant as a device on the floor writes it: milliseconds, with the day's offset. */
  readonly instant: (atMs: number) => string;
  /** Milliseconds of a day's minute by the wall clock. */
  readonly at: (day: string, minute: number) => number;
  /** The plant's calendar day. */
  readonly day: (atMs: number) => string;
};

/** The wall clock of a plant. Offsets are kept by day: a plant does not work through the small hours they change in. */
export const floorClock = (zone: string): FloorClock => {
  const offsets = new Map<number, number>();
  const offsetAt = (atMs: number): number => {
    const day = Math.floor(atMs / DAY_MS);
    const known = offsets.get(day);
    if (known !== undefined) return known;
    const fresh = offsetMinutes(zone, day * DAY_MS + DAY_MS / 2);
    offsets.set(day, fresh);
    return fresh;
  };
  const instant = (atMs: number): string => {
    const offset = offsetAt(atMs);
    return `${new Date(atMs + offset * MINUTE_MS).toISOString().slice(0, 23)}${signed(offset)}`;
  };
  return {
    instant,
    at: (day, minute) => {
      const utc = Date.parse(`${day}T00:00:00Z`) + minute * MINUTE_MS;
      return utc - offsetAt(utc) * MINUTE_MS;
    },
    day: (atMs) => instant(atMs).slice(0, 10),
  };
};

/** The last `count` working days, Monday to Friday, that end on or before `last`; the first comes first. */
export const workingDays = (last: string, count: number): readonly string[] => {
  const days: string[] = [];
  for (let ms = Date.parse(`${last}T00:00:00Z`); days.length < count; ms -= DAY_MS) {
    const weekday = new Date(ms).getUTCDay();
    if (weekday !== 0 && weekday !== 6) days.push(new Date(ms).toISOString().slice(0, 10));
  }
  return days.reverse();
};
