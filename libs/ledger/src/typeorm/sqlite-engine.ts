import { OPEN_READONLY } from 'sqlite3';
import { KeyTaken } from '../writer/log-store';
import type { Commit } from '../writer/log-store';
import type { Sql } from '../port';
import type { Engine, Lease } from './engine';
import { MIGRATIONS, MIGRATIONS_TABLE } from './migrations';
import { poolOf } from './reader-pool';
import { holderNow } from './sqlite-holder';
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
    record: (ledger, commit) =>
      run(RECORD_BATCH, batchParameters(ledger, commit)).then(() => true, falseWhereSuperseded),
    recordsAlone: true,
    among: (column) => `${column} IN (SELECT value FROM json_each($1))`,
    list: (texts) => JSON.stringify(texts),
    lease: leaseOn(writer, file),
    close: async () => {
      await reader.close();
      await writer.close();
    },
  };
};

/** On some errors, a full disk among them, SQLite rolls back by itself. */
const unlessEndedAlready = (error: unknown): void => {
  if (String(error).includes('no transaction is active')) return;
  throw error;
};

/**
 * A file has one machine's processes around it: who opens it last writes, and the one before finds out. That nobody
 * alive is pushed aside is looked after before it is opened.
 */
const leaseOn = (writer: Sql, file: string): Lease => ({
  take: async (ledger) => {
    const [row] = await writer.query<{ epoch: number }>(
      'UPDATE writer SET epoch = epoch + 1, holder = $2 WHERE plant = $1 RETURNING epoch',
      [ledger, holderNow(file)],
    );
    if (row === undefined) throw new Error(`The writer row of ledger ${ledger} is missing`);
    return row;
  },
  renewal: '',
  release: `, holder = 'nobody'`,
  renewEveryMs: undefined,
});

/** A trigger takes the batch apart: see the migration that makes it. */
const RECORD_BATCH = `
  INSERT INTO batch (plant, epoch, head, cuts, block, leaves, keys, digests)
  VALUES ($1, $2, $3, $4, $5, $6, $7, $8)`;

const batchParameters = (ledger: string, { tenure, events, keys }: Commit): readonly unknown[] => {
  const { envelopes, starts, lengths, block, leaves } = events;
  // SQLite counts bytes from 1.
  const cuts = envelopes.map(({ stream, version }, n) => [stream, version, (starts[n] ?? 0) + 1, lengths[n]]);
  return [
    ...[ledger, tenure.epoch, tenure.head],
    ...[JSON.stringify(cuts), block, leaves],
    JSON.stringify(keys.map(({ key, first, count }) => [key, first, count])),
    Buffer.concat(keys.map(({ digest }) => digest)),
  ];
};

const falseWhereSuperseded = (error: unknown): false => {
  const message = String(error);
  if (message.includes('writer superseded')) return false;
  throw message.includes('UNIQUE constraint failed: asking.key') ? new KeyTaken({ cause: error }) : error;
};
