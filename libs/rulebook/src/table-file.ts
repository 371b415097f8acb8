import { parse } from 'csv-parse/sync';
import type { z } from 'zod';
import type { Complain } from './complain';

/** A row of a table: its number (the header is row 1) and its cells by column; `-` reads as empty. */
export type TableRow = { readonly row: number; readonly cells: { readonly [column: string]: string } };

export type Table = {
  readonly file: string;
  readonly header: readonly string[];
  readonly rows: readonly TableRow[];
};

/** Reads RFC 4180 text with a header. Rows that do not parse are complained of; the others are kept. */
export const readTable = (file: string, text: string | undefined, complain: Complain): Table => {
  const [header = [], ...records] = text === undefined ? [] : recordsOf(file, text, complain);
  const rows = records.flatMap((record, index) => {
    const row = index + 2;
    if (record.every((cell) => cell.trim() === '')) return [];
    if (record.length === header.length) return [{ row, cells: cellsOf(header, record) }];
    complain({
      file,
      row,
      column: null,
      says: `has ${record.length} cells where the header has ${header.length}`,
    });
    return [];
  });
  return { file, header, rows };
};

const recordsOf = (file: string, text: string, complain: Complain): readonly (readonly string[])[] => {
  try {
    return parse(text, { bom: true, relax_column_count: true, skip_empty_lines: false });
  } catch (error) {
    complain({
      file,
      row: rowOf(error),
      column: null,
      says: error instanceof Error ? error.message : String(error),
    });
    return [];
  }
};

/** The row that could not be read: one after those that could. */
const rowOf = (error: unknown): number =>
  error instanceof Error && 'records' in error && typeof error.records === 'number' ? error.records + 1 : 1;

const cellsOf = (
  header: readonly string[],
  record: readonly string[],
): { readonly [column: string]: string } =>
  Object.fromEntries(header.map((column, index) => [column, blankIfDash((record[index] ?? '').trim())]));

const blankIfDash = (cell: string): string => (cell === '-' ? '' : cell);

/** What belongs in a table: the shape of a row, and whether columns beyond it are conditions on the design. */
export type TableShape<T> = { readonly shape: z.ZodObject & z.ZodType<T>; readonly conditions: boolean };

export type ShapedRow<T> = TableRow & { readonly is: T };

/** The rows that have the shape; all others, and columns too many or too few, are complained of. */
export const shapedRows = <T>(
  { file, header, rows }: Table,
  { shape, conditions }: TableShape<T>,
  attributes: ReadonlySet<string>,
  complain: Complain,
): readonly ShapedRow<T>[] => {
  if (header.length === 0) return [];
  const known = Object.keys(shape.shape);
  const at = (column: string, says: string): void => complain({ file, row: 1, column, says });
  known.filter((column) => !header.includes(column)).forEach((column) => at(column, 'column is missing'));
  header
    .filter((column) => !known.includes(column) && !(conditions && attributes.has(column)))
    .forEach((column) =>
      at(column, conditions ? 'is no column here and no design attribute' : 'is no column here'),
    );
  header
    .filter((column, index) => header.indexOf(column) !== index)
    .forEach((column) => at(column, 'column stands here twice'));
  if (!known.every((column) => header.includes(column))) return [];

  return rows.flatMap((row) => shaped(file, row, shape, complain));
};

const shaped = <T>(
  file: string,
  row: TableRow,
  shape: z.ZodType<T>,
  complain: Complain,
): readonly ShapedRow<T>[] => {
  const parsed = shape.safeParse(row.cells);
  if (parsed.success) return [{ ...row, is: parsed.data }];

  for (const { path, message } of parsed.error.issues) {
    complain({ file, row: row.row, column: path.join('.'), says: message });
  }
  return [];
};
