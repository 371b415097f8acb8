import { parse } from 'csv-parse/sync';
import { z } from 'zod';
import type { Complain, ComplainHere } from './complain';
import { here } from './complain';
import { shapeSays } from './shape-says';

/** A row of a table: its number (the header is row 1) and its cells by column; `-` reads as empty. */
export type TableRow = { readonly row: number; readonly cells: { readonly [column: string]: string } };

export type Table = {
  readonly file: string;
  readonly header: readonly string[];
  readonly rows: readonly TableRow[];
};

/** Reads RFC 4180 text with a header. Rows that do not parse are complained of; the others are kept. */
export const readTable = (file: string, text: string | undefined, complain: Complain): Table => {
  const delimiter = text === undefined ? ',' : delimiterOf(text);
  const [header = [], ...records] = text === undefined ? [] : recordsOf(file, text, delimiter, complain);
  const names = header.map((name) => name.trim());
  const rows = records.flatMap((record, index) => {
    const row = index + 2;
    if (record.every((cell) => cell.trim() === '')) return [];
    if (delimiter === ';') checkCommas(record, names, here(complain, file, row));
    if (record.length === header.length) return [{ row, cells: cellsOf(names, record) }];
    complain({
      file,
      row,
      column: null,
      says: `has ${record.length} cells where the header has ${header.length}`,
    });
    return [];
  });
  return { file, header: names, rows };
};

/** Where a comma stands in numbers, a spreadsheet parts its cells by semicolons: harmless, and told by the header. */
export const delimiterOf = (text: string): ',' | ';' => {
  const [header = ''] = text.split(/[\r\n]/, 1);
  return header.includes(';') && !header.includes(',') ? ';' : ',';
};

/** Such a spreadsheet writes 1,25 for 1.25, and a list of 1 and 25 looks the same. */
const checkCommas = (record: readonly string[], header: readonly string[], complain: ComplainHere): void =>
  record.forEach((cell, at) => {
    const number = /^[^"\p{L}]*\d,\d[^"\p{L}]*$/u.exec(cell)?.[0];
    if (number !== undefined) {
      complain(
        header[at] ?? null,
        `\`${cell.trim()}\`: write a decimal with a point, a list with a space after its comma`,
      );
    }
  });

const recordsOf = (
  file: string,
  text: string,
  delimiter: string,
  complain: Complain,
): readonly (readonly string[])[] => {
  try {
    return parse(text, {
      bom: true,
      delimiter,
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_column_count: true,
      skip_empty_lines: false,
    });
  } catch (error) {
    complain({
      file,
      row: rowOf(error),
      column: null,
      says: `is no CSV: ${error instanceof Error ? error.message : String(error)}`,
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
  const needed = known.filter((column) => !mayBeAbsent(shape, column));
  needed.filter((column) => !header.includes(column)).forEach((column) => at(column, 'column is missing'));
  header
    .filter((column) => !known.includes(column) && !(conditions && attributes.has(column)))
    .forEach((column) =>
      at(column, conditions ? 'is no column here and no design attribute' : 'is no column here'),
    );
  header
    .filter((column, index) => header.indexOf(column) !== index)
    .forEach((column) => at(column, 'column stands here twice'));
  if (!needed.every((column) => header.includes(column))) return [];

  return rows.flatMap((row) => shaped(file, row, shape, complain));
};

const mayBeAbsent = ({ shape }: z.ZodObject, column: string): boolean =>
  z.safeParse(shape[column] ?? z.never(), undefined).success;

const shaped = <T>(
  file: string,
  row: TableRow,
  shape: z.ZodType<T>,
  complain: Complain,
): readonly ShapedRow<T>[] => {
  const parsed = shape.safeParse(row.cells);
  if (parsed.success) return [{ ...row, is: parsed.data }];

  for (const { path, message } of parsed.error.issues) {
    complain({ file, row: row.row, column: path.join('.'), says: shapeSays(message) });
  }
  return [];
};
