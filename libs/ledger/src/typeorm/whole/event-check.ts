import { hash } from 'node:crypto';
import type { Sql } from '../../port';
import { LEAF_BYTES } from '../../writer/envelope';
import { columnOf, parsedOr, saysTheSame } from './columns';
import type { Column } from './columns';
import { eventPage, eventRows } from './event-pages';
import type { EventPage } from './event-pages';
import type { Findings } from './findings';

export type LastOf = { version: number; position: number; leaf: Buffer };

export type EventCheck = {
  /** Hash over the bytes that are stored now, at the position it stands at. */
  readonly leaf: (leaf: Buffer, position: number, streams: ReadonlyMap<string, LastOf>) => void;
  readonly progress: (position: number) => void;
};

type Ground = {
  readonly ledger: string;
  /** What the writer said it had recorded, when this began: it may go on meanwhile. */
  readonly head: number;
  readonly wrong: Findings;
};

/** Holes are named one by one, but nobody wants a million of them named. */
const HOLES_NAMED = 1_000;

/** Reads every event, hashes it anew and compares all that is said of it. Returns the last event of each stream. */
export const checkEvents = async (
  sql: Sql,
  ground: Ground,
  { leaf, progress }: EventCheck,
): Promise<ReadonlyMap<string, LastOf>> => {
  const { head, wrong } = ground;
  const streams = new Map<string, LastOf>();
  let at = 0;
  const holesBefore = (position: number): void => {
    for (let hole = at + 1; hole < position && hole - at <= HOLES_NAMED; hole += 1)
      wrong.add('row-missing', { position: hole });
  };
  const each: Each = (body, made, kept, column) => {
    holesBefore(column.position);
    checkOne({ body, made, kept, column, streams }, ground);
    at = column.position;
    leaf(made, at, streams);
  };
  await eachEvent(sql, head, each, () => progress(at));
  holesBefore(head + 1);
  return streams;
};

const eachEvent = async (sql: Sql, head: number, each: Each, afterPage: () => void): Promise<void> => {
  let after = 0;
  for (let next = eventPage(sql, after, head); ;) {
    const page = await next;
    if (page.count === 0) return;

    const rows = isWhole(page) ? [] : await eventRows(sql, after, head);
    after = rows.at(-1)?.position ?? columnOf(page.places.at(-1) ?? '').position;
    // The database reads the next page on another thread while this one is hashed.
    next = eventPage(sql, after, head);
    // Heard when it is awaited; meanwhile it must not count as nobody's.
    next.catch(() => undefined);
    if (rows.length === 0) inBlock(page, each);
    for (const row of rows) each(row.body, leafOver(row.body), row.leaf, row);
    afterPage();
  }
};

type Each = (body: Buffer, made: Buffer, kept: Buffer, column: Column) => void;

const isWhole = ({ count, bodies, leaves, places }: EventPage): boolean =>
  places.length === count && leaves.length === count * LEAF_BYTES && newlinesIn(bodies) === count;

const newlinesIn = (bytes: Buffer): number => {
  let found = 0;
  for (let at = bytes.indexOf(NEWLINE); at >= 0; at = bytes.indexOf(NEWLINE, at + 1)) found += 1;
  return found;
};

const NEWLINE = 0x0a;
const LEAF_PREFIX = 0;

/** The byte between two bodies is made the prefix a leaf is hashed with, so that nothing is copied. */
const inBlock = ({ bodies, leaves, places }: EventPage, each: Each): void => {
  let from = 0;
  for (const [n, place] of places.entries()) {
    const found = bodies.indexOf(NEWLINE, from + 1);
    const end = found < 0 ? bodies.length : found;
    bodies[from] = LEAF_PREFIX;
    const made = hash('sha256', bodies.subarray(from, end), 'buffer');
    const kept = leaves.subarray(n * LEAF_BYTES, (n + 1) * LEAF_BYTES);
    each(bodies.subarray(from + 1, end), made, kept, columnOf(place));
    from = end;
  }
};

const leafOver = (body: Buffer): Buffer =>
  hash('sha256', Buffer.concat([Buffer.of(LEAF_PREFIX), body]), 'buffer');

type One = {
  readonly body: Buffer;
  readonly made: Buffer;
  readonly kept: Buffer;
  readonly column: Column;
  readonly streams: Map<string, LastOf>;
};

const checkOne = ({ body, made, kept, column, streams }: One, { ledger, wrong }: Ground): void => {
  if (!made.equals(kept)) wrong.add('row-altered', column);
  else if (!saysTheSame(body, ledger, column)) misplaced(body, column, ledger, wrong);

  const last = streams.get(column.stream);
  if (last === undefined) {
    gapBefore(column, 0, wrong);
    streams.set(column.stream, { version: column.version, position: column.position, leaf: made });
    return;
  }
  gapBefore(column, last.version, wrong);
  last.version = column.version;
  last.position = column.position;
  last.leaf = made;
};

const misplaced = (body: Buffer, column: Column, ledger: string, wrong: Findings): void => {
  const said = parsedOr(body);
  if (said?.ledger !== undefined && said.ledger !== ledger)
    wrong.add('row-foreign', column, { found: said.ledger });
  else
    wrong.add('row-misplaced', column, {
      found: `${said?.stream ?? '?'} ${said?.version ?? '?'} (${said?.position ?? '?'})`,
    });
};

/** Versions go up by one; anything else is a hole, and an event that comes after a higher one stands at a wrong place. */
const gapBefore = ({ stream, version, position }: Column, before: number, wrong: Findings): void => {
  if (version === before + 1) return;
  if (version <= before)
    wrong.add('row-misplaced', { stream, version, position }, { found: `${stream} ${version}` });
  for (let gone = before + 1; gone < version && gone - before <= HOLES_NAMED; gone += 1)
    wrong.add('version-missing', { stream, version: gone });
};
