import { leafOf } from '@libs/ledger';
import { append } from '../append';
import type { Stored } from '../append';
import { perSecond } from '../bench';
import type { Contest, Row } from '../bench';
import { openRaw } from '../raw-sqlite';
import { scratch } from '../scratch';

/** The batch the bare driver writes in one statement. */
const BARE_BATCH = 100;

/** The same bytes under the same durability: rows ready made, a statement a hundred, nothing decided or hashed. */
const bareBatches = async (
  file: string,
  events: readonly Stored[],
  leaves: readonly Buffer[],
): Promise<number> => {
  const raw = await openRaw(file);
  await raw.exec(`PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;
    CREATE TABLE event (position INTEGER PRIMARY KEY, stream TEXT NOT NULL, version INTEGER NOT NULL,
      body TEXT NOT NULL, leaf BLOB NOT NULL, UNIQUE (stream, version)) STRICT`);
  const begin = await raw.prepare('BEGIN IMMEDIATE');
  const insert = await raw.prepare(
    `INSERT INTO event VALUES ${Array(BARE_BATCH).fill('(?,?,?,?,?)').join(',')}`,
  );
  const commit = await raw.prepare('COMMIT');
  const whole = Math.floor(events.length / BARE_BATCH) * BARE_BATCH;
  const rate = await perSecond(whole, async () => {
    for (let from = 0; from < whole; from += BARE_BATCH) {
      const batch = events.slice(from, from + BARE_BATCH);
      await begin();
      await insert(batch.flatMap((e, n) => [e.position, e.stream, e.version, e.body, leaves[from + n]]));
      await commit();
    }
  });
  await raw.close();
  return rate;
};

const prepareWith =
  (callers: number) =>
  async (size: number): Promise<Contest> => {
    const files = scratch();
    const { events } = await append(files.file(), callers, Math.max(size, BARE_BATCH));
    const leaves = events.map(({ body }) => leafOf(body));
    return {
      ours: async () => (await append(files.file(), callers, size)).rate,
      peer: () => bareBatches(files.file(), events, leaves),
      close: files.clear,
    };
  };

const row = (name: string, callers: number, goal: number): Row => ({
  name,
  unit: 'events/s',
  better: 'more',
  peerName: 'bare sqlite3, batches of 100',
  goal,
  prepare: prepareWith(callers),
});

export const appendRows = [row('append', 64, 0.35), row('append-256', 256, 0.6)] as const;
