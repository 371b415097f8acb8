/** A time as a log writes it, as an instant with the zone's offset; undefined when it cannot be read. */
export type ReadTime = (text: string) => string | undefined;

const MINUTE_MS = 60_000;
/** No zone has changed its clock within a quarter of an hour that began on the quarter. */
const QUARTER_MS = 15 * MINUTE_MS;
const OFFSETS_KEPT = 5_000;
const DIGITS: { readonly [token: string]: number } = { yyyy: 4, MM: 2, dd: 2, HH: 2, mm: 2, ss: 2, SSS: 3 };
const TOKEN = /yyyy|SSS|MM|dd|HH|mm|ss/g;
const ISO =
  /^(\d{4}-\d{2}-\d{2})(?:[T ](\d{2}:\d{2})(?::(\d{2}))?(?:[.,](\d{1,9}))?)?\s*(Z|[+-]\d{2}:?\d{2})?$/;

export const timeReader = (format: string, zone: string): ReadTime => {
  const offset = offsetOf(zone);
  if (format === 'iso') return (text) => isoTime(text.trim(), offset);
  if (format === 'epoch-ms') return (text) => epochTime(text, 1, offset);
  if (format === 'epoch-s') return (text) => epochTime(text, 1_000, offset);
  return patternTime(format, offset);
};

/** Minutes the zone is ahead of UTC at an instant. */
type Offset = (atMs: number) => number;

const offsetOf = (zone: string): Offset => {
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
  });
  const known = new Map<number, number>();
  return (atMs) => {
    const quarter = Math.floor(atMs / QUARTER_MS);
    const kept = known.get(quarter);
    if (kept !== undefined) return kept;

    const beginMs = quarter * QUARTER_MS;
    const parts = Object.fromEntries(
      format.formatToParts(beginMs).map(({ type, value }) => [type, Number(value)]),
    );
    const { year = 0, month = 0, day = 0, hour = 0, minute = 0 } = parts;
    const ahead = Math.round((Date.UTC(year, month - 1, day, hour, minute) - beginMs) / MINUTE_MS);
    if (known.size > OFFSETS_KEPT) known.clear();
    known.set(quarter, ahead);
    return ahead;
  };
};

const isoTime = (text: string, offset: Offset): string | undefined => {
  const [, day, minutes = '00:00', seconds = '00', fraction = '', zone] = ISO.exec(text) ?? [];
  if (day === undefined) return undefined;

  const wall = `${day}T${minutes}:${seconds}.${fraction.slice(0, 3).padEnd(3, '0')}`;
  if (zone === undefined) return fromWall(wall, offset);
  const told = zone === 'Z' ? 'Z' : `${zone.slice(0, 3)}:${zone.slice(-2)}`;
  return exists(wall) ? `${wall}${told}` : undefined;
};

const epochTime = (text: string, unitMs: number, offset: Offset): string | undefined =>
  /^\d{1,16}(?:\.\d+)?$/.test(text.trim()) ? instantAt(Math.round(Number(text) * unitMs), offset) : undefined;

/** Everything in a pattern that is not one of its tokens stands for itself. */
const patternTime = (pattern: string, offset: Offset): ReadTime => {
  const tokens: readonly string[] = pattern.match(TOKEN) ?? [];
  const source = pattern
    .split(TOKEN)
    .map((text) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'))
    .reduce((all, text, index) => all + digitsOf(tokens[index - 1]) + text);
  const form = new RegExp(`^${source}$`);

  return (text) => {
    const found = form.exec(text.trim());
    if (found === null) return undefined;
    const part = (token: string, otherwise: string): string =>
      found[tokens.indexOf(token) + 1 || -1] ?? otherwise;
    const day = `${part('yyyy', '')}-${part('MM', '')}-${part('dd', '')}`;
    const pair = (token: string): string => part(token, '0').padStart(2, '0');
    return fromWall(`${day}T${pair('HH')}:${pair('mm')}:${pair('ss')}.${part('SSS', '000')}`, offset);
  };
};

const digitsOf = (token: string | undefined): string =>
  token === undefined
    ? ''
    : token === 'yyyy' || token === 'SSS'
      ? `(\\d{${DIGITS[token] ?? 2}})`
      : '(\\d{2})';

/** Dates that do not exist, such as 30 February, would roll over in silence. */
const exists = (wall: string): boolean => {
  const ms = Date.parse(`${wall}Z`);
  return Number.isFinite(ms) && new Date(ms).toISOString() === `${wall}Z`;
};

/** The wall clock's time in the zone; in the hour that autumn repeats, the first. */
const fromWall = (wall: string, offset: Offset): string | undefined => {
  if (!exists(wall)) return undefined;
  const asUtc = Date.parse(`${wall}Z`);
  const guess = asUtc - offset(asUtc - offset(asUtc) * MINUTE_MS) * MINUTE_MS;
  return instantAt(guess, offset);
};

const instantAt = (atMs: number, offset: Offset): string | undefined => {
  if (!Number.isFinite(atMs)) return undefined;
  const ahead = offset(atMs);
  const pair = (number: number): string => String(number).padStart(2, '0');
  const zone = `${ahead < 0 ? '-' : '+'}${pair(Math.floor(Math.abs(ahead) / 60))}:${pair(Math.abs(ahead) % 60)}`;
  return `${new Date(atMs + ahead * MINUTE_MS).toISOString().slice(0, 23)}${zone}`;
};
