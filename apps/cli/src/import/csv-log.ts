import { createReadStream } from 'node:fs';
import { CsvError, parse } from 'csv-parse';
import { LogUnreadable } from './log-row';
import type { LogRow } from './log-row';

/** Longer than any line of a log; beyond it a quote was left open. */
const LONGEST_RECORD = 1_000_000;

type Parsed = { readonly record: readonly string[]; readonly info: { readonly lines: number } };

/** Rows of a CSV file (RFC 4180) by the names of its header: byte order mark, CRLF and quotes included, one at a time. */
export async function* csvLog(
  file: string,
  delimiter: string,
  needed: readonly string[] = [],
): AsyncGenerator<LogRow> {
  let header: readonly string[] | undefined;
  // The parser counts a CRLF inside quotes as two lines; a person looking for the row counts one.
  let last = 0;
  let countedTwice = 0;
  try {
    for await (const { record, info } of parsedRecords(file, delimiter)) {
      const line = last + 1;
      countedTwice += record.reduce((sum, field) => sum + field.split('\r\n').length - 1, 0);
      last = info.lines - countedTwice;
      if (header === undefined) header = headerOf(file, record, needed);
      else yield rowOf(header, record, line);
    }
  } catch (error) {
    if (error instanceof CsvError)
      throw new LogUnreadable(file, Number(error['lines'] ?? last), error.message);
    throw error;
  }
  if (header === undefined) throw new LogUnreadable(file, null, 'the file is empty; a header is expected');
}

const parsedRecords = (file: string, delimiter: string): AsyncIterable<Parsed> =>
  createReadStream(file).pipe(
    parse({
      bom: true,
      delimiter,
      info: true,
      max_record_size: LONGEST_RECORD,
      relax_column_count: true,
      skip_empty_lines: true,
    }),
  );

const rowOf = (header: readonly string[], record: readonly string[], line: number): LogRow => {
  const fields = Object.fromEntries(header.map((name, index) => [name, record[index] ?? '']));
  return record.length === header.length
    ? { line, fields }
    : { line, fields, broken: `has ${record.length} columns where the header has ${header.length}` };
};

/** Two columns of one name would silently be one; without a column the mapping names, every row would be refused. */
const headerOf = (file: string, record: readonly string[], needed: readonly string[]): readonly string[] => {
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
