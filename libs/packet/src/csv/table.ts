import { stringify } from 'csv-stringify/sync';

/** A number stays a number; null is an empty cell. */
export type Cell = string | number | null;
export type Table = { readonly columns: readonly string[]; readonly rows: readonly (readonly Cell[])[] };

/**
 * A spreadsheet runs what begins with one of these (OWASP ASVS 5.0, 1.2.10), the full-width forms and the control
 * characters that it skips in front of them included. An apostrophe in front makes it text.
 */
const RUNS = /^[=+\-@\t\r\n\0＝＋－＠]/;
const guarded = (cell: Cell): Cell => (typeof cell === 'string' && RUNS.test(cell) ? `'${cell}` : cell);

/** RFC 4180: CRLF, quotes where the text asks for them, a heading first. For reading: what is proven is the JSON, not this. */
export const csvOf = ({ columns, rows }: Table): Uint8Array =>
  Buffer.from(
    stringify([[...columns], ...rows.map((row) => row.map(guarded))], {
      record_delimiter: '\r\n',
      // The library by itself leaves a lone LF unquoted where records end in CRLF.
      quoted_match: /[",\r\n]/,
    }),
    'utf8',
  );
