import type { Envelope } from '@libs/kernel';
import type { Sql } from '../port';
import { envelopeOf } from '../recorded';
import type { Engine } from './engine';

/** Events handed over at once: about 3 MB of text. Who wants more asks again from the last position. */
export const PAGE_LIMIT = 5_000;

type Row = { readonly body: string };

const parsed = (rows: readonly Row[]): readonly Envelope[] => rows.map(({ body }) => envelopeOf(body));

export const eventsBetween = async (sql: Sql, first: number, last: number): Promise<readonly Envelope[]> =>
  parsed(
    await sql.query<Row>('SELECT body FROM event WHERE position BETWEEN $1 AND $2 ORDER BY position', [
      first,
      last,
    ]),
  );

export const eventsAfter = async (sql: Sql, position: number, limit: number): Promise<readonly Envelope[]> =>
  parsed(
    await sql.query<Row>('SELECT body FROM event WHERE position > $1 ORDER BY position LIMIT $2', [
      position,
      Math.max(0, Math.min(limit, PAGE_LIMIT)),
    ]),
  );

/** All of them, page by page, so that no single query holds a connection for long. */
export const eventsOfStreams = async (
  { reader, among, list }: Engine,
  streams: readonly string[],
): Promise<readonly Envelope[]> => {
  const events: Envelope[] = [];
  for (;;) {
    const rows = await reader.query<Row>(
      `SELECT body FROM event WHERE ${among('stream')} AND position > $2 ORDER BY position LIMIT ${PAGE_LIMIT}`,
      [list(streams), events.at(-1)?.position ?? 0],
    );
    for (const event of parsed(rows)) events.push(event);
    if (rows.length < PAGE_LIMIT) return events;
  }
};

export const headOf = async (sql: Sql): Promise<number> => {
  const [row] = await sql.query<{ head: number | null }>('SELECT max(position) AS head FROM event');
  return row?.head ?? 0;
};
