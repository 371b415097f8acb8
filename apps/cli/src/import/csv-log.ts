import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import { Readable } from 'node:stream';
import { CsvError, parse } from 'csv-parse';
import { LogUnreadable } from './log-row';
import type { LogRow } from './log-row';

/** Longer than any line of a log; beyond it a quote was left open. */
const LONGEST_RECORD = 1_000_000;

type Parsed = { readonly record: readonly string[]; readonly info: { readonly lines: number } };

/** A record, and the lines of the file it takes up. */
type Record = { readonly fields: readonly string[]; readonly line: number; readonly lastLine: number };

/**
 * Rows of a CSV file (RFC 4180) by the names of its header: byte order mark, CRLF and quotes included, one at a time.
 * A row that opens a quote and does not close it is refused by itself: reading begins again with the line below it.
 */
export async function* csvLog(
  file: string,
  delimiter: string,
  needed: readonly string[] = [],
): AsyncGenerator<LogRow> {
  const header = await headerOf(file, delimiter, needed);
  let from: Start | null = { line: 1, careful: false };
  while (from !== null) from = yield* rowsFrom({ file, delimiter, header }, from);
}

type Log = { readonly file: string; readonly delimiter: string; readonly header: readonly string[] };

/** Rows until one that cannot be read; returns where to begin again, null at the end of the file. */
async function* rowsFrom(
  { file, delimiter, header }: Log,
  start: Start,
): AsyncGenerator<LogRow, Start | null> {
  let last = start.line - 1;
  try {
    for await (const { fields, line, lastLine } of recordsFrom(file, delimiter, start)) {
      last = lastLine;
      if (line === 1) continue;
      const row = rowOf(header, fields, line);
      yield row;
      if (row.broken !== undefined && line !== lastLine) return { line: line + 1, careful: false };
    }
    return null;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    if (!start.careful) return { line: last + 1, careful: true };
    yield { line: last + 1, fields: {}, broken: 'opens a quote and never closes it' };
    return { line: last + 2, careful: false };
  }
}

/** `careful`: one line at a time, so that what stands above a line that cannot be read is given out first. */
type Start = { readonly line: number; readonly careful: boolean };

async function* recordsFrom(file: string, delimiter: string, start: Start): AsyncGenerator<Record> {
  const from = start.line;
  // The parser counts a CRLF inside quotes as two lines; a person looking for the row counts one.
  let last = from - 1;
  let countedTwice = 0;
  for await (const { record, info } of parsedRecords(linesFrom(file, start), delimiter, start.careful)) {
    const line = last + 1;
    countedTwice += record.reduce((sum, field) => sum + field.split('\r\n').length - 1, 0);
    last = from - 1 + info.lines - countedTwice;
    yield { fields: record, line, lastLine: last };
  }
}

/** The file itself from its first line; from any other, the lines one by one. */
const linesFrom = (file: string, { line, careful }: Start): Readable =>
  line === 1 && !careful ? createReadStream(file) : Readable.from(lineByLine(file, line));

async function* lineByLine(file: string, from: number): AsyncGenerator<string> {
  let line = 0;
  for await (const text of createInterface({ input: createReadStream(file, 'utf8'), crlfDelay: Infinity })) {
    line += 1;
    if (line >= from) yield `${text}\n`;
  }
}

const parsedRecords = (lines: Readable, delimiter: string, careful: boolean): AsyncIterable<Parsed> =>
  lines.pipe(
    parse({
      bom: true,
      delimiter,
      info: true,
      max_record_size: LONGEST_RECORD,
      relax_column_count: true,
      skip_empty_lines: true,
      ...(careful ? { readableHighWaterMark: 1, writableHighWaterMark: 1 } : {}),
    }),
  );

const rowOf = (header: readonly string[], record: readonly string[], line: number): LogRow => {
  const fields = Object.fromEntries(header.map((name, index) => [name, record[index] ?? '']));
  return record.length === header.length
    ? { line, fields }
    : { line, fields, broken: `has ${record.length} columns where the header has ${header.length}` };
};

const headerOf = async (
  file: string,
  delimiter: string,
  needed: readonly string[],
): Promise<readonly string[]> => {
  try {
    for await (const { fields } of recordsFrom(file, delimiter, { line: 1, careful: true }))
      return namesIn(file, fields, needed);
  } catch (error) {
    if (error instanceof CsvError) throw new LogUnreadable(file, 1, error.message);
    throw error;
  }
  throw new LogUnreadable(file, null, 'the file is empty; a header is expected');
};

/** Two columns of one name would silently be one; without a column the mapping names, every row would be refused. */
const namesIn = (file: string, record: readonly string[], needed: readonly string[]): readonly string[] => {
  const header = record.map((name) => name.trim());
  const twice = header.find((name, index) => header.indexOf(name) !== index);
  if (twice !== undefined) throw new LogUnreadable(file, 1, `column "${twice}" stands twice in the header`);
  const absent = needed.find((name) => !header.includes(name));
  if (absent !== undefined) {
    throw new LogUnreadable(
      file,
      1,
      `there is no column "${absent}", which the mapping names; there are: ${header.join(', ')}`,
    );
  }
  return header;
};
