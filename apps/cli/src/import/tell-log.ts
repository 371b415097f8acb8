import type { Plant, Sender } from '@libs/plant';
import { tellPlant } from '../telling';
import type { Sent, TellingAnswer } from '../telling';
import { importKey } from './import-key';
import type { LogEntry } from './log-entry';
import { homeOf } from './scan-log';
import type { LogScan } from './scan-log';

/** What of a row the plant could not take; null: all of it was taken. */
export type Refusal = string | null;

export type LogTeller = {
  /** The lane in which this row's order must be kept. */
  readonly lane: (entry: LogEntry) => string;
  readonly tell: (entry: LogEntry) => Promise<Refusal>;
  /** Receives the lot a row is the first to name. */
  readonly receiveLot: (entry: LogEntry) => Promise<Refusal>;
};

type Ground = {
  readonly plant: Plant;
  readonly scan: LogScan;
  /** Opaque id of each name in the log. */
  readonly people: ReadonlyMap<string, string>;
  /** Codes under which a row's defect is counted; null: the rulebook has codes of its own and the mapping names none. */
  readonly defectOf: (entry: LogEntry) => { readonly component: string; readonly symptom: string } | null;
  /** Operations after which a unit has left the plant. */
  readonly shippedAfter: readonly string[];
  readonly lotKind: string;
  readonly isKeyReused: (error: unknown) => boolean;
};

/** The machine that speaks where the log names nobody. */
export const IMPORTER = 'import';

/** Answers that say what a row needs is there already. */
const THERE_ALREADY = new Set(['serial-already-ordered', 'section-already-started', 'lot-already-received']);

/** A row as a scan would have told it: ordered and started where new, moved where elsewhere, then the work. */
export const logTeller = (ground: Ground): LogTeller => {
  const standing = new Map<string, string>();
  const ordered = new Set<string>();

  return {
    receiveLot: async (entry) => {
      const lot = ground.scan.lotIds.take(entry.lot ?? '');
      if (!lot.ok) return lot.reason.replace('serial', 'lot');
      return (await rowTeller(ground, entry, '').tell('lot', { lot: lot.id, kind: ground.lotKind })).refusal;
    },
    lane: (entry) => {
      const serial = ground.scan.serials.take(entry.serial);
      return (serial.ok ? homeOf(ground.scan.serials, entry, serial.id) : null) ?? entry.serial;
    },
    tell: async (entry) => {
      const serial = ground.scan.serials.take(entry.serial);
      if (!serial.ok) return serial.reason;
      const row = rowTeller(ground, entry, serial.id);
      return (
        (await order(row, ordered)) ??
        (await bring(row, standing)) ??
        (await work(row)) ??
        (await charge(row)) ??
        (await ship(row))
      );
    },
  };
};

type RowTeller = {
  readonly ground: Ground;
  readonly entry: LogEntry;
  readonly serial: string;
  readonly tell: (name: Part, fields: object) => Promise<Told>;
};

/** Each thing a row may lead to keeps its number, so that its key is the same however far an import got before. */
const PARTS = ['home', 'start', 'move', 'lot', 'work', 'defect', 'shipment'] as const;
type Part = (typeof PARTS)[number];
/** `elsewhere`: another import or person has told it before. */
type Told = { readonly refusal: Refusal; readonly elsewhere: boolean };

const rowTeller = (ground: Ground, entry: LogEntry, serial: string): RowTeller => ({
  ground,
  entry,
  serial,
  tell: async (name, fields) => {
    const sender: Sender = {
      key: importKey(entry.mark, PARTS.indexOf(name)),
      actor: (entry.person === null ? undefined : ground.people.get(entry.person)) ?? IMPORTER,
      assurance: 'token',
    };
    const body = { ...fields, occurredAt: entry.occurredAt, via: 'import' };
    const answer = await answered(ground, { name, body, sender });
    if (answer.ok) return { refusal: null, elsewhere: false };
    return THERE_ALREADY.has(answer.code) || isGrownHome(name, answer.code)
      ? { refusal: null, elsewhere: true }
      : { refusal: `${name}: ${answer.reason}`, elsewhere: false };
  },
});

const KEY_REUSED = 'key-reused';

/** A key that came before with other content: the file is the same, the mapping is not. */
const answered = async (ground: Ground, sent: Sent): Promise<TellingAnswer> => {
  try {
    return await tellPlant(ground.plant, sent);
  } catch (error) {
    if (!ground.isKeyReused(error)) throw error;
    return { ok: false, code: KEY_REUSED, reason: 'this row was imported before, read by another mapping' };
  }
};

/** A longer log of the same home names more of its sections than when it was ordered. */
const isGrownHome = (name: Part, code: string): boolean => name === 'home' && code === KEY_REUSED;

const order = async ({ ground, entry, serial, tell }: RowTeller, ordered: Set<string>): Promise<Refusal> => {
  const home = homeOf(ground.scan.serials, entry, serial);
  if (home === null) return `home "${entry.home ?? ''}" cannot be written as a serial`;
  if (ordered.has(home)) return null;

  const sections = (ground.scan.homes.get(home) ?? [serial]).map((own) => ({ serial: own }));
  const { refusal } = await tell('home', { home, model: 'imported', design: {}, sections });
  if (refusal === null) ordered.add(home);
  return refusal;
};

/** Where the section stands is known from this log; only where another has started it is the plant asked. */
const bring = async (
  { ground, entry, serial, tell }: RowTeller,
  standing: Map<string, string>,
): Promise<Refusal> => {
  if (!standing.has(serial)) {
    const { refusal, elsewhere } = await tell('start', { serial, at: entry.station });
    if (refusal !== null) return refusal;
    const found = elsewhere ? await ground.plant.asks.section(serial, null) : undefined;
    standing.set(serial, found?.station ?? entry.station);
  }
  if (standing.get(serial) === entry.station) return null;

  const { refusal } = await tell('move', { serial, to: entry.station });
  if (refusal === null) standing.set(serial, entry.station);
  return refusal;
};

const work = async ({ ground, entry, serial, tell }: RowTeller): Promise<Refusal> => {
  const lot = entry.lot === null ? null : ground.scan.lotIds.take(entry.lot);
  if (lot?.ok === false) return lot.reason.replace('serial', 'lot');
  const lots = lot === null ? [] : [lot.id];
  return (await tell('work', { serial, operation: entry.operation, station: entry.station, lots })).refusal;
};

/** Pieces rejected or work done over: a nonconformance of this operation, found where it was done. */
const charge = async ({ ground, entry, serial, tell }: RowTeller): Promise<Refusal> => {
  if (entry.rejected === 0 && !entry.rework) return null;
  const defect = ground.defectOf(entry);
  if (defect === null) return 'defect: name a `defect` component and symptom of the rulebook in the mapping';

  const told = await tell('defect', {
    serial,
    ...defect,
    operation: entry.operation,
    foundAt: entry.station,
    quantity: Math.max(1, entry.rejected),
  });
  return told.refusal;
};

const ship = async ({ ground, entry, serial, tell }: RowTeller): Promise<Refusal> =>
  ground.shippedAfter.includes(entry.operation) ? (await tell('shipment', { serial })).refusal : null;
