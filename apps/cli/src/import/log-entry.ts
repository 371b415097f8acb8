import { rowMarks } from './import-key';
import type { RowMark } from './import-key';
import type { LogRow } from './log-row';
import type { ReadTime } from './log-time';
import type { Mapping } from './mapping';

/** What one row says was done, in Studbook's words. */
export type LogEntry = {
  readonly line: number;
  /** What its keys are made from. */
  readonly mark: RowMark;
  /** As the log has it; what Studbook calls it is settled over the whole file. */
  readonly serial: string;
  readonly home: string | null;
  readonly operation: string;
  readonly station: string;
  readonly person: string | null;
  readonly occurredAt: string;
  readonly rejected: number;
  readonly rework: boolean;
  readonly lot: string | null;
};

export type ReadEntry =
  | { readonly is: 'entry'; readonly entry: LogEntry }
  /** Not a completion of work, by the mapping's own word. */
  | { readonly is: 'passed-over' }
  | { readonly is: 'refused'; readonly line: number; readonly reason: string };

const LONGEST_CODE = 64;
const YES = ['1', 'yes', 'true', 'y', 'x', 'rework'];
const MOST_REJECTED = 10_000;

/** Reads the rows of one file, from its beginning; each reading of it takes a reader of its own. */
export const entryReader = (mapping: Mapping, readTime: ReadTime): ((row: LogRow) => ReadEntry) => {
  const marked = rowMarks();
  return (row) => {
    const { only } = mapping;
    const text: Text = (column) => (column === undefined ? '' : (row.fields[column] ?? '').trim());
    const mark = marked(JSON.stringify(row.fields), text(mapping.time));
    if (row.broken !== undefined) return { is: 'refused', line: row.line, reason: row.broken };
    if (only !== undefined && !only.values.includes(row.fields[only.column] ?? ''))
      return { is: 'passed-over' };

    const reason = whyNot(mapping, text);
    const occurredAt = readTime(text(mapping.time));
    const rejected = countOf(text(mapping.rejected));
    if (reason !== undefined) return { is: 'refused', line: row.line, reason };
    if (occurredAt === undefined)
      return { is: 'refused', line: row.line, reason: timeProblem(mapping, text) };
    if (rejected === undefined) return { is: 'refused', line: row.line, reason: countProblem(mapping, text) };

    return { is: 'entry', entry: { line: row.line, mark, occurredAt, rejected, ...saidBy(mapping, text) } };
  };
};

type Text = (column: string | undefined) => string;

const whyNot = (mapping: Mapping, text: Text): string | undefined => {
  for (const column of [mapping.serial, mapping.operation, mapping.time]) {
    if (text(column) === '') return `column "${column}" is empty`;
  }
  for (const column of [mapping.operation, mapping.station]) {
    if (text(column).length > LONGEST_CODE)
      return `column "${column}": longer than ${LONGEST_CODE} characters`;
  }
  return undefined;
};

const timeProblem = (mapping: Mapping, text: Text): string =>
  `column "${mapping.time}": "${text(mapping.time)}" is not a time by format "${mapping.timeFormat}"`;

const countProblem = (mapping: Mapping, text: Text): string =>
  `column "${mapping.rejected ?? ''}": "${text(mapping.rejected)}" is not a whole number from 0 to ${MOST_REJECTED}`;

const saidBy = (
  mapping: Mapping,
  text: Text,
): Omit<LogEntry, 'line' | 'mark' | 'occurredAt' | 'rejected'> => ({
  serial: text(mapping.serial),
  home: text(mapping.home) || null,
  operation: text(mapping.operation),
  station: text(mapping.station) || text(mapping.operation),
  person: text(mapping.person) || null,
  rework: isRework(mapping, text),
  lot: text(mapping.lot) || null,
});

/** Spreadsheets write whole numbers as 3.0 too. */
const countOf = (text: string): number | undefined => {
  if (text === '') return 0;
  const count = /^\d{1,6}(?:\.0+)?$/.test(text) ? Number(text) : Number.NaN;
  return count <= MOST_REJECTED ? count : undefined;
};

const isRework = ({ rework }: Mapping, text: Text): boolean => {
  if (rework === undefined) return false;
  return typeof rework === 'string'
    ? YES.includes(text(rework).toLowerCase())
    : rework.yes.includes(text(rework.column));
};
