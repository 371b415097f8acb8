import { createHash } from 'node:crypto';
import { ROUTES } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import { delimiterOf } from '@libs/rulebook';
import { CsvError, parse } from 'csv-parse/sync';
import type { Sender, Tellings } from '../told';

type FileAnswer = AnswerOf<'claimsFile'>;
type Cells = { readonly [column: string]: string };

/** What a column holds; those that are left out are as if they were empty. */
export const CLAIM_COLUMNS = [
  'received',
  'source',
  'claim',
  'home',
  'section',
  'component',
  'symptom',
  'place',
  'noticed',
  'words',
  'no_failure',
  'retailer',
  'hauler',
  'installer',
  'set',
  'occupied',
  'address',
] as const;
const NEEDED = ['received', 'source'] as const;

export type ClaimsFile = (csv: string, sender: Omit<Sender, 'key'>) => Promise<FileAnswer>;

/**
 * A CSV of complaints and claims (RFC 4180), a row each. Every row is told by itself, under a key made of what it says:
 * a file sent again, or one that has grown, tells nothing twice. What cannot be taken is named by its line.
 */
export const claimsFile =
  (complaint: Tellings['complaint']): ClaimsFile =>
  async (csv, sender) => {
    const read = rowsIn(csv);
    if (!read.ok) return { rows: 0, taken: 0, refused: [{ line: read.line, reason: read.reason }] };
    const refused: FileAnswer['refused'] = [];
    for (const { line, cells } of read.rows) {
      const reason = await told(complaint, sender, cells);
      if (reason !== null) refused.push({ line, reason });
    }
    const rows = read.rows.length;
    return { rows, taken: rows - refused.length, refused };
  };

const told = async (
  complaint: Tellings['complaint'],
  sender: Omit<Sender, 'key'>,
  cells: Cells,
): Promise<string | null> => {
  const body = ROUTES.complaint.body.safeParse(bodyOf(cells));
  if (!body.success) {
    return body.error.issues
      .map(({ path, message }) => `${COLUMN_OF[path.join('.')] ?? path.join('.')}: ${message}`)
      .join('; ');
  }
  const outcome = await complaint(body.data, { ...sender, key: keyOf(cells) }, {});
  if (outcome.ok) return null;
  const { code, pointer: _pointer, ...fields } = outcome.rejection;
  return [code, ...Object.entries(fields).map(([name, value]) => `${name} ${String(value)}`)].join(', ');
};

/** Where a field of the request stands in the file. */
const COLUMN_OF: { readonly [path: string]: string } = {
  receivedOn: 'received',
  noFailureBecause: 'no_failure',
  'opened.section': 'section',
  'opened.component': 'component',
  'opened.symptom': 'symptom',
  'opened.place': 'place',
  'opened.noticedOn': 'noticed',
  'delivery.setOn': 'set',
  'delivery.occupiedOn': 'occupied',
  'delivery.retailer': 'retailer',
  'delivery.hauler': 'hauler',
  'delivery.installer': 'installer',
  'delivery.address': 'address',
};

const bodyOf = (cells: Cells): object => {
  const of = (column: (typeof CLAIM_COLUMNS)[number]): string | null => cells[column]?.trim() || null;
  const given = (fields: { readonly [field: string]: string | null }): object =>
    Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== null));
  const delivery = given({
    retailer: of('retailer'),
    hauler: of('hauler'),
    installer: of('installer'),
    setOn: of('set'),
    occupiedOn: of('occupied'),
    address: of('address'),
  });
  const [section, component, symptom] = [of('section'), of('component'), of('symptom')];
  const opened = { section, component, symptom, place: of('place'), noticedOn: of('noticed') };
  return {
    ...given({ claim: of('claim'), words: of('words'), noFailureBecause: of('no_failure') }),
    receivedOn: of('received'),
    source: of('source'),
    home: of('home'),
    via: 'import',
    ...(component === null && symptom === null ? {} : { opened }),
    ...(Object.keys(delivery).length === 0 ? {} : { delivery }),
  };
};

/** UUIDv8 (RFC 9562) of what the row says. */
const keyOf = (cells: Cells): string => {
  const said = CLAIM_COLUMNS.map((column) => cells[column]?.trim() ?? '');
  const hex = createHash('sha256').update(JSON.stringify(said)).digest('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(12, 15)}-8${hex.slice(15, 18)}-${hex.slice(18, 30)}`;
};

type Rows =
  | { readonly ok: true; readonly rows: readonly { readonly line: number; readonly cells: Cells }[] }
  | { readonly ok: false; readonly line: number; readonly reason: string };

type Parsed = { readonly record: Cells; readonly info: { readonly lines: number } };

const rowsIn = (csv: string): Rows => {
  try {
    let header: readonly string[] = [];
    const records: Parsed[] = parse(csv, {
      bom: true,
      delimiter: delimiterOf(csv),
      info: true,
      skip_empty_lines: true,
      columns: (names: string[]) => {
        const read = names.map((name) => name.trim().toLowerCase());
        header = read;
        return read;
      },
    });
    const problem = headerProblem(header);
    if (problem !== null) return { ok: false, line: 1, reason: problem };
    return { ok: true, rows: records.map(({ record, info }) => ({ line: info.lines, cells: record })) };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { ok: false, line: lineIn(error), reason: error.message };
  }
};

const lineIn = (error: CsvError): number => {
  const { lines } = error as { readonly lines?: unknown };
  return typeof lines === 'number' ? lines : 1;
};

const headerProblem = (header: readonly string[]): string | null => {
  const absent = NEEDED.find((name) => !header.includes(name));
  if (absent !== undefined) return `there is no column "${absent}"; there are: ${header.join(', ')}`;
  const stranger = header.find((name) => !CLAIM_COLUMNS.some((one) => one === name));
  return stranger === undefined
    ? null
    : `column "${stranger}" is not known; a file may have: ${CLAIM_COLUMNS.join(', ')}`;
};
