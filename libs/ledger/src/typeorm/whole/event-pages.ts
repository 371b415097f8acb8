import { HASH_BYTES } from '@libs/proof';
import type { Sql } from '../../port';

/** Where the columns of a row say that its event stands. */
export type Column = { readonly position: number; readonly version: number; readonly stream: string };

/**
 * A page of events as the database holds them, all bodies in one block of bytes. Row by row the same takes five times
 * as long, most of it spent on handing rows over.
 */
export type EventPage = {
  /** Each body begins behind one byte that is free to be written over, and ends before the next such byte. */
  readonly bodies: Buffer;
  /** Where these bytes are; one more, at the end. */
  readonly cuts: Int32Array;
  /** Of each event, 32 bytes. */
  readonly leaves: Buffer;
  readonly columns: readonly Column[];
};

/** About 700 kB of text: it stays in a processor's own memory from being read to being hashed. */
export const PAGE = 1_024;

type Row = {
  readonly bodies: Buffer | string | null;
  readonly leaves: Buffer | string | null;
  readonly positions: string;
  readonly versions: string;
  readonly streams: string;
};

const ROWS = `
  SELECT position, version, stream, body, leaf FROM event
  WHERE position > $1 AND position <= $2 ORDER BY position LIMIT ${PAGE}`;

const SQLITE = `
  SELECT CAST(group_concat(body, char(10)) AS BLOB) AS bodies,
         CAST(group_concat(leaf, '') AS BLOB) AS leaves,
         group_concat(position) AS positions,
         group_concat(version) AS versions,
         group_concat(stream, char(10)) AS streams
  FROM (${ROWS})`;

const POSTGRES = `
  SELECT string_agg(body, E'\\n' ORDER BY position) AS bodies,
         string_agg(leaf, ''::bytea ORDER BY position) AS leaves,
         string_agg(position::text, ',' ORDER BY position) AS positions,
         string_agg(version::text, ',' ORDER BY position) AS versions,
         string_agg(stream, E'\\n' ORDER BY position) AS streams
  FROM (${ROWS}) page`;

/** Undefined: there is none. `odd`: somebody has put newlines or hashes of another length in; take `eventRows`. */
export type PageRead = EventPage | 'odd' | undefined;

export const eventPage = async (sql: Sql, after: number, upTo: number): Promise<PageRead> => {
  const [row] = await sql.query<Row>(sql.dialect === 'sqlite' ? SQLITE : POSTGRES, [after, upTo]);
  if (row === undefined || row.bodies === null) return undefined;

  const bodies = typeof row.bodies === 'string' ? Buffer.from(row.bodies) : row.bodies;
  return pageOf({ ...row, bodies });
};

const pageOf = (row: Row & { readonly bodies: Buffer }): EventPage | 'odd' => {
  const leaves = Buffer.from(row.leaves ?? []);
  const columns = columnsOf(row);
  const cuts = cutsOf(row.bodies, columns.length);
  if (cuts === undefined || leaves.length !== columns.length * HASH_BYTES) return 'odd';
  return isOneEach(row, columns) ? { bodies: row.bodies, cuts, leaves, columns } : 'odd';
};

const columnsOf = ({ positions, versions, streams }: Row): readonly Column[] => {
  const [of, names] = [numbersIn(versions), streams.split('\n')];
  return numbersIn(positions).map((position, n) => ({
    position,
    version: of[n] ?? 0,
    stream: names[n] ?? '',
  }));
};

/** A stream's name with a newline in it would shift all names behind it. */
const isOneEach = ({ streams }: Row, columns: readonly Column[]): boolean =>
  streams.split('\n').length === columns.length;

const numbersIn = (list: string): readonly number[] => JSON.parse(`[${list}]`) as number[];

/** Undefined where there are not as many bodies. The first has no byte before it: its cut is minus one. */
const cutsOf = (bodies: Buffer, count: number): Int32Array | undefined => {
  const cuts = new Int32Array(count + 1);
  cuts[0] = -1;
  let found = 0;
  for (let at = bodies.indexOf(NEWLINE); at >= 0; at = bodies.indexOf(NEWLINE, at + 1)) {
    found += 1;
    if (found >= count) return undefined;
    cuts[found] = at;
  }
  cuts[count] = bodies.length;
  return found === count - 1 ? cuts : undefined;
};

const NEWLINE = 0x0a;

export type EventRow = Column & { readonly body: Buffer; readonly leaf: Buffer };

type PlainRow = Column & { readonly body: Buffer | string; readonly leaf: Buffer | string };

/** The same page row by row. */
export const eventRows = async (sql: Sql, after: number, upTo: number): Promise<readonly EventRow[]> => {
  const body = sql.dialect === 'sqlite' ? 'CAST(body AS BLOB)' : 'body';
  const rows = await sql.query<PlainRow>(
    `SELECT position, version, stream, ${body} AS body, leaf FROM (${ROWS}) page ORDER BY position`,
    [after, upTo],
  );
  return rows.map((row) => ({ ...row, body: Buffer.from(row.body), leaf: Buffer.from(row.leaf) }));
};
