import { OPEN_READONLY } from 'sqlite3';
import type { AnsweredKey, Written } from '../writer/log-store';
import type { Sql } from '../port';
import type { Engine, Lease } from './engine';
import { MIGRATIONS, MIGRATIONS_TABLE } from './migrations';
import { poolOf } from './reader-pool';
import { connectSqlite } from './sqlite-sql';

/** Two, so that a slow report leaves one for the screens. */
const READERS = 2;

/** How long a statement waits for another process that writes to the same file. */
const BUSY_MS = 5_000;

/** An answer is given only after the commit is on disk. */
const WRITER_PRAGMAS = ['synchronous = FULL', 'recursive_triggers = ON', 'cache_size = -65536'];
const READER_PRAGMAS = ['query_only = ON', 'mmap_size = 268435456'];

export const openSqlite = async (file: string): Promise<Engine> => {
  const writer = await connectSqlite(
    {
      database: file,
      enableWAL: true,
      busyTimeout: BUSY_MS,
      migrations: MIGRATIONS,
      migrationsTableName: MIGRATIONS_TABLE,
      migrationsRun: true,
    },
    WRITER_PRAGMAS,
  );
  const readers = [];
  for (let n = 0; n < READERS; n += 1) {
    const options = { database: file, flags: OPEN_READONLY, busyTimeout: BUSY_MS } as const;
    readers.push(await connectSqlite(options, READER_PRAGMAS));
  }
  const reader = poolOf(readers);

  const run = async (sql: string, parameters?: readonly unknown[]): Promise<void> => {
    await writer.query(sql, parameters);
  };
  return {
    writer,
    reader,
    begin: () => run('BEGIN IMMEDIATE'),
    commit: () => run('COMMIT'),
    rollback: () => run('ROLLBACK').catch(unlessEndedAlready),
    insertEvents: (events) => run(INSERT_EVENTS, eventParameters(events)),
    insertKeys: (keys) => run(INSERT_KEYS, keyParameters(keys)),
    among: (column) => `${column} IN (SELECT value FROM json_each($1))`,
    list: (texts) => JSON.stringify(texts),
    lease: leaseOn(writer),
    close: async () => {
      await reader.close();
      await writer.close();
    },
  };
};

/** On some errors, a full disk among them, SQLite rolls back by itself. */
const unlessEndedAlready = (error: unknown): void => {
  if (error instanceof Error && error.message.includes('no transaction is active')) return;
  throw error;
};

/** A file has one machine's processes around it: who opens it last writes, and the one before finds out. */
const leaseOn = (writer: Sql): Lease => ({
  take: async (ledger) => {
    const [row] = await writer.query<{ epoch: number }>(
      'UPDATE writer SET epoch = epoch + 1, holder = $2 WHERE plant = $1 RETURNING epoch',
      [ledger, `process ${process.pid}`],
    );
    if (row === undefined) throw new Error(`The writer row of ledger ${ledger} is missing`);
    return row;
  },
  renewal: '',
  release: '',
  renewEveryMs: undefined,
});

/**
 * One statement for any number of events: texts and hashes go over as one block of bytes each, cut up by offsets.
 * Bound row by row, or escaped into JSON once more, the same batch takes a fifth to a third longer.
 */
const INSERT_EVENTS = `
  INSERT INTO event (position, stream, version, body, leaf)
  SELECT $1 + key, value ->> 0, value ->> 1,
         CAST(substr($3, value ->> 2, value ->> 3) AS TEXT), substr($4, key * 32 + 1, 32)
  FROM json_each($2)`;

const eventParameters = (events: readonly Written[]): readonly unknown[] => {
  const bodies = events.map(({ body }) => Buffer.from(body));
  let start = 1;
  const cuts = events.map(({ envelope }, index) => {
    const length = bodies[index]?.length ?? 0;
    start += length;
    return [envelope.stream, envelope.version, start - length, length];
  });
  const leaves = Buffer.concat(events.map(({ leaf }) => leaf));
  return [events[0]?.envelope.position, JSON.stringify(cuts), Buffer.concat(bodies), leaves];
};

const INSERT_KEYS = `
  INSERT INTO asking (key, digest, first, events)
  SELECT value ->> 0, substr($2, key * 32 + 1, 32), value ->> 1, value ->> 2
  FROM json_each($1)`;

const keyParameters = (keys: readonly AnsweredKey[]): readonly unknown[] => [
  JSON.stringify(keys.map(({ key, first, count }) => [key, first, count])),
  Buffer.concat(keys.map(({ digest }) => digest)),
];
