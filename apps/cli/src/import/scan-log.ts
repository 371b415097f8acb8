import type { LogEntry, ReadEntry } from './log-entry';
import type { LogRow } from './log-row';
import { serialsOf } from './serials';
import type { Serials } from './serials';

/** What a first reading of the whole log learns, before anything of it is told. */
export type LogScan = {
  readonly rows: number;
  readonly stations: readonly string[];
  /** Each operation with the station where it was first seen. */
  readonly operations: readonly { readonly id: string; readonly station: string }[];
  readonly people: readonly string[];
  /** Each lot with the row that names it first. */
  readonly lots: readonly LogEntry[];
  readonly lotIds: Serials;
  readonly serials: Serials;
  /** Serials of each home, as Studbook calls them; a serial without a home is one of its own. */
  readonly homes: ReadonlyMap<string, readonly string[]>;
  readonly first: string | null;
};

export const scanLog = async (
  rows: AsyncIterable<LogRow>,
  read: (row: LogRow) => ReadEntry,
  progress: (rows: number) => void,
): Promise<LogScan> => {
  const seen = {
    operations: new Map<string, string>(),
    stations: new Set<string>(),
    people: new Set<string>(),
    lots: new Map<string, LogEntry>(),
    homes: new Map<string, Set<string>>(),
  };
  const serials = serialsOf();
  let count = 0;
  let first: string | null = null;

  for await (const row of rows) {
    count += 1;
    progress(count);
    const found = read(row);
    if (found.is !== 'entry') continue;
    const { entry } = found;
    note(seen, serials, entry);
    if (first === null || Date.parse(entry.occurredAt) < Date.parse(first)) first = entry.occurredAt;
  }
  return {
    rows: count,
    stations: [...seen.stations],
    operations: [...seen.operations].map(([id, station]) => ({ id, station })),
    people: [...seen.people],
    lots: [...seen.lots.values()],
    lotIds: serialsOf(),
    serials,
    homes: new Map([...seen.homes].map(([home, own]) => [home, [...own]])),
    first,
  };
};

type Seen = {
  readonly operations: Map<string, string>;
  readonly stations: Set<string>;
  readonly people: Set<string>;
  readonly lots: Map<string, LogEntry>;
  readonly homes: Map<string, Set<string>>;
};

const note = (seen: Seen, serials: Serials, entry: LogEntry): void => {
  seen.stations.add(entry.station);
  if (!seen.operations.has(entry.operation)) seen.operations.set(entry.operation, entry.station);
  if (entry.person !== null) seen.people.add(entry.person);
  if (entry.lot !== null && !seen.lots.has(entry.lot)) seen.lots.set(entry.lot, entry);

  const serial = serials.take(entry.serial);
  if (!serial.ok) return;
  const home = homeOf(serials, entry, serial.id);
  if (home === null) return;
  const own = seen.homes.get(home) ?? new Set<string>();
  own.add(serial.id);
  seen.homes.set(home, own);
};

/** A unit that belongs to no larger one is ordered under a name of its own. */
export const homeOf = (serials: Serials, entry: LogEntry, serial: string): string | null => {
  if (entry.home === null) return `order.${serial}`.slice(0, 64);
  const home = serials.take(`home ${entry.home}`);
  return home.ok ? home.id : null;
};
