import type { Sql } from '../../port';

/**
 * A page of events as the database holds them, bodies in one block of bytes: each behind one byte that is free to be
 * written over. Row by row the same takes three times as long, most of it spent on handing rows over.
 */
export type EventPage = {
  readonly count: number;
  readonly bodies: Buffer;
  /** Of each event, 32 bytes. */
  readonly leaves: Buffer;
  /** `position version stream`, as the columns have it. */
  readonly places: readonly string[];
};

/** About 2.5 MB of text: enough that one trip more or less does not show. */
export const PAGE = 4_096;

type Row = {
  readonly count: number;
  readonly bodies: Buffer | string | null;
  readonly leaves: string | null;
  readonly places: string | null;
};

const SQLITE = `
  SELECT count(*) AS count,
         CAST(char(10) || group_concat(body, char(10)) AS BLOB) AS bodies,
         group_concat(hex(leaf), '') AS leaves,
         group_concat(position || ' ' || version || ' ' || stream, char(10)) AS places
  FROM (SELECT position, version, stream, body, leaf FROM event WHERE position > $1 AND position <= $2 ORDER BY position LIMIT ${PAGE})`;

const POSTGRES = `
  SELECT count(*) AS count,
         E'\\n' || string_agg(body, E'\\n' ORDER BY position) AS bodies,
         string_agg(encode(leaf, 'hex'), '' ORDER BY position) AS leaves,
         string_agg(position || ' ' || version || ' ' || stream, E'\\n' ORDER BY position) AS places
  FROM (SELECT position, version, stream, body, leaf FROM event WHERE position > $1 AND position <= $2 ORDER BY position LIMIT ${PAGE}) page`;

export const eventPage = async (sql: Sql, after: number, upTo: number): Promise<EventPage> => {
  const [row] = await sql.query<Row>(sql.dialect === 'sqlite' ? SQLITE : POSTGRES, [after, upTo]);
  const { count = 0, bodies, leaves, places } = row ?? {};
  return {
    count,
    bodies: typeof bodies === 'string' ? Buffer.from(bodies) : (bodies ?? Buffer.alloc(0)),
    leaves: Buffer.from(leaves ?? '', 'hex'),
    places: places === null || places === undefined ? [] : places.split('\n'),
  };
};

export type EventRow = {
  readonly position: number;
  readonly version: number;
  readonly stream: string;
  readonly body: Buffer;
  readonly leaf: Buffer;
};

type PlainRow = Omit<EventRow, 'body' | 'leaf'> & {
  readonly body: Buffer | string;
  readonly leaf: Buffer | string;
};

/** The same row by row, for a page that somebody has put newlines or hashes of another length into. */
export const eventRows = async (sql: Sql, after: number, upTo: number): Promise<readonly EventRow[]> => {
  const body = sql.dialect === 'sqlite' ? 'CAST(body AS BLOB)' : 'body';
  const rows = await sql.query<PlainRow>(
    `SELECT position, version, stream, ${body} AS body, leaf FROM event
     WHERE position > $1 AND position <= $2 ORDER BY position LIMIT ${PAGE}`,
    [after, upTo],
  );
  return rows.map((row) => ({ ...row, body: Buffer.from(row.body), leaf: Buffer.from(row.leaf) }));
};
