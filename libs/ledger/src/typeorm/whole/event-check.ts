import { hash } from 'node:crypto';
import { HASH_BYTES } from '@libs/proof';
import type { Sql } from '../../port';
import { parsedOr, saysTheSame, saysTheSameParsed } from './columns';
import { eventPage, eventRows } from './event-pages';
import type { Column, EventPage, EventRow } from './event-pages';
import type { Findings } from './findings';

export type LastOf = { version: number; position: number };

type Ground = {
  readonly ledger: string;
  /** What the writer said it had recorded, when this began: it may go on meanwhile. */
  readonly head: number;
  readonly wrong: Findings;
};

export type EventHearer = {
  /** Hashes over the bytes that are stored now, side by side: the first is of the event at this position. */
  readonly hashes: (position: number, hashes: Buffer) => void;
  /** This event has been looked at, and is the last one of its stream so far. */
  readonly passed: (position: number, streams: ReadonlyMap<string, LastOf>) => void;
  readonly progress: (position: number) => void;
};

/** Holes are named one by one, but nobody wants a million of them named. */
const HOLES_NAMED = 1_000;

/** Reads every event, hashes it anew and compares all that is said of it. Returns the last event of each stream. */
export const checkEvents = async (
  sql: Sql,
  ground: Ground,
  hearer: EventHearer,
): Promise<ReadonlyMap<string, LastOf>> => {
  const walk = walkThrough(ground, hearer);
  const { head } = ground;
  for (let next = eventPage(sql, 0, head); ;) {
    const page = await next;
    if (page === undefined) break;

    const rows = page === 'odd' ? await eventRows(sql, walk.at(), head) : [];
    const last = page === 'odd' ? rows.at(-1) : page.columns.at(-1);
    // The database reads the next page on another thread while this one is hashed.
    next = eventPage(sql, last?.position ?? head, head);
    // Heard when it is awaited; meanwhile it must not count as nobody's.
    next.catch(() => undefined);
    if (page === 'odd') for (const row of rows) walk.row(row);
    else walk.block(page);
    hearer.progress(walk.at());
  }
  walk.end();
  return walk.streams;
};

const walkThrough = (ground: Ground, hearer: EventHearer) => {
  const { ledger, head, wrong } = ground;
  const streams = new Map<string, LastOf>();
  let at = 0;

  const holesBefore = (position: number): void => {
    for (let hole = at + 1; hole < position && hole - at <= HOLES_NAMED; hole += 1)
      wrong.add('row-missing', { position: hole });
  };
  const pass = (column: Column): void => {
    if (column.position !== at + 1) holesBefore(column.position);
    follow(streams, column, wrong);
    at = column.position;
    hearer.passed(at, streams);
  };
  return {
    streams,
    at: () => at,
    end: () => holesBefore(head + 1),
    row: (row: EventRow): void => {
      const made = leafOver(row.body);
      hearer.hashes(row.position, made);
      if (!made.equals(row.leaf)) wrong.add('row-altered', placeOf(row));
      else if (!saysTheSameParsed(row.body, ledger, row)) misplaced(row.body, row, ledger, wrong);
      pass(row);
    },
    block: (page: EventPage): void => {
      const made = leavesOver(page);
      hearEach(page, made, hearer);
      for (const n of differing(page, made, ledger)) explain(page, n, made, { ledger, wrong });
      for (const column of page.columns) pass(column);
    },
  };
};

const LEAF_PREFIX = 0;

const leafOver = (body: Buffer): Buffer =>
  hash('sha256', Buffer.concat([Buffer.of(LEAF_PREFIX), body]), 'buffer');

/** The byte between two bodies is made the prefix a leaf is hashed with, so that nothing is copied. */
const leavesOver = ({ bodies, cuts, columns }: EventPage): Buffer => {
  const made = Buffer.allocUnsafe(columns.length * HASH_BYTES);
  leafOver(bodies.subarray(0, cuts[1])).copy(made);
  for (let n = 1; n < columns.length; n += 1) {
    const from = cuts[n] ?? 0;
    bodies[from] = LEAF_PREFIX;
    made.write(hash('sha256', bodies.subarray(from, cuts[n + 1]), 'binary'), n * HASH_BYTES, 'latin1');
  }
  return made;
};

/** In one piece where there are no holes between. */
const hearEach = ({ columns }: EventPage, made: Buffer, { hashes }: EventHearer): void => {
  const [first, last] = [columns[0]?.position ?? 0, columns.at(-1)?.position ?? 0];
  if (last - first + 1 === columns.length) {
    hashes(first, made);
    return;
  }
  for (const [n, { position }] of columns.entries())
    hashes(position, made.subarray(n * HASH_BYTES, (n + 1) * HASH_BYTES));
};

/** Rows whose hash is another than the one stored, or whose event says that it stands elsewhere. */
const differing = (page: EventPage, made: Buffer, ledger: string): readonly number[] => {
  const { bodies, cuts, columns, leaves } = page;
  const text = bodies.toString('latin1');
  const same = made.equals(leaves);
  const found: number[] = [];
  for (const [n, column] of columns.entries()) {
    const at = n * HASH_BYTES;
    const altered = !same && made.compare(leaves, at, at + HASH_BYTES, at, at + HASH_BYTES) !== 0;
    if (altered || !saysTheSame(text, cuts[n + 1] ?? 0, ledger, column)) found.push(n);
  }
  return found;
};

const explain = (page: EventPage, n: number, made: Buffer, { ledger, wrong }: Omit<Ground, 'head'>): void => {
  const column = page.columns[n];
  if (column === undefined) return;
  const at = n * HASH_BYTES;
  const body = page.bodies.subarray((page.cuts[n] ?? 0) + 1, page.cuts[n + 1]);
  if (made.compare(page.leaves, at, at + HASH_BYTES, at, at + HASH_BYTES) !== 0)
    wrong.add('row-altered', column);
  else if (!saysTheSameParsed(body, ledger, column)) misplaced(body, column, ledger, wrong);
};

const placeOf = ({ position, version, stream }: Column): Column => ({ position, version, stream });

const misplaced = (body: Buffer, column: Column, ledger: string, wrong: Findings): void => {
  const said = parsedOr(body);
  if (said?.ledger !== undefined && said.ledger !== ledger)
    wrong.add('row-foreign', placeOf(column), { found: said.ledger });
  else
    wrong.add('row-misplaced', placeOf(column), {
      found: `${said?.stream ?? '?'} ${said?.version ?? '?'} (${said?.position ?? '?'})`,
    });
};

const follow = (
  streams: Map<string, LastOf>,
  { stream, version, position }: Column,
  wrong: Findings,
): void => {
  const last = streams.get(stream);
  if (last === undefined) streams.set(stream, { version, position });
  gapBefore({ stream, version, position }, last?.version ?? 0, wrong);
  if (last === undefined) return;
  last.version = version;
  last.position = position;
};

/** Versions go up by one; anything else is a hole, and an event that comes after a higher one stands at a wrong place. */
const gapBefore = ({ stream, version, position }: Column, before: number, wrong: Findings): void => {
  if (version === before + 1) return;
  if (version <= before)
    wrong.add('row-misplaced', { stream, version, position }, { found: `${stream} ${version}` });
  for (let gone = before + 1; gone < version && gone - before <= HOLES_NAMED; gone += 1)
    wrong.add('version-missing', { stream, version: gone });
};
