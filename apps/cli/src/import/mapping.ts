import { existsSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { z } from 'zod';

/** A column's or attribute's name. */
const Column = z.string().min(1);

/** Which columns (CSV) or attributes (XES) of a log say what. YAML or JSON. */
const Mapping = z.strictObject({
  serial: Column,
  operation: Column,
  station: Column.optional(),
  person: Column.optional(),
  time: Column,
  rejected: Column.optional(),
  rework: z.union([Column, z.strictObject({ column: Column, yes: z.array(z.string()).min(1) })]).optional(),
  home: Column.optional(),
  lot: Column.optional(),
  /** Rows are taken when this column says so; a start of work is not its end. */
  only: z.strictObject({ column: Column, values: z.array(z.string()).min(1) }).optional(),
  /** How times are written: `iso`, `epoch-ms`, `epoch-s`, or a pattern of yyyy MM dd HH mm ss SSS. */
  timeFormat: z.string().min(1).default('iso'),
  /** The zone of times that do not say theirs: an IANA name. */
  zone: z
    .string()
    .refine(isZone, 'is not a time zone of the IANA list, such as America/Chicago')
    .default('UTC'),
  delimiter: z.string().length(1).default(','),
  plant: z.string().min(1).optional(),
  /** Codes under which rejected pieces and work done over are counted, where the rulebook has codes of its own. */
  defect: z.strictObject({ component: z.string().min(1), symptom: z.string().min(1) }).optional(),
  lotKind: z.string().min(1).default('lot'),
  /** Operations after which a unit has left the plant, and the last station with it. */
  shippedAfter: z.array(z.string().min(1)).default([]),
});

export type Mapping = z.output<typeof Mapping>;

function isZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

export class MappingWrong extends Error {
  constructor(file: string, says: readonly string[]) {
    super(says.map((line) => `${file}: ${line}`).join('\n'));
    this.name = 'MappingWrong';
  }
}

/** JSON is YAML, so one reader takes both. */
export const readMapping = (file: string): Mapping => {
  const read = Mapping.safeParse(parsed(file));
  if (read.success) return read.data;
  throw new MappingWrong(
    file,
    read.error.issues.map(
      ({ path, message }) => `${path.length === 0 ? 'the mapping' : path.join('.')}: ${message}`,
    ),
  );
};

const parsed = (file: string): unknown => {
  if (!existsSync(file)) throw new MappingWrong(file, ['there is no such file']);
  try {
    return parse(readFileSync(file, 'utf8'));
  } catch (error) {
    if (error instanceof Error) throw new MappingWrong(file, [error.message]);
    throw error;
  }
};

/** Every column a mapping speaks of. */
export const columnsOf = ({ serial, operation, time, ...more }: Mapping): readonly string[] => {
  const { station, person, rejected, rework, home, lot, only } = more;
  const reworkColumn = typeof rework === 'object' ? rework.column : rework;
  const columns = [serial, operation, time, station, person, rejected, reworkColumn, home, lot, only?.column];
  return columns.filter((column) => column !== undefined);
};

/** What an XES log calls these things by the standard's own extensions (concept, time, organizational, lifecycle). */
export const XES_MAPPING: Mapping = {
  serial: 'trace:concept:name',
  operation: 'concept:name',
  person: 'org:resource',
  time: 'time:timestamp',
  only: { column: 'lifecycle:transition', values: ['complete', 'COMPLETE', ''] },
  timeFormat: 'iso',
  zone: 'UTC',
  delimiter: ',',
  lotKind: 'lot',
  shippedAfter: [],
};
