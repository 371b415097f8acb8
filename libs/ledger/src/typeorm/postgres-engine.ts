import { types } from 'pg';
import { DataSource } from 'typeorm';
import type { DataSourceOptions } from 'typeorm';
import type { Sql } from '../port';
import { LEAF_BYTES } from '../writer/envelope';
import { KeyTaken } from '../writer/log-store';
import type { Commit } from '../writer/log-store';
import type { Engine } from './engine';
import { MIGRATIONS, MIGRATIONS_TABLE } from './migrations';
import { postgresLease } from './postgres-lease';
import { sessionOn } from './postgres-session';

/** Sessions for questions. More would only compete for the same cores. */
const READERS = 4;

/** A writer that stands still in the middle of a transaction holds the writer row; after this the server ends it. */
const IDLE_IN_TRANSACTION_MS = 10_000;

/** Positions and counts are 64-bit integers, which the driver hands over as text; ours are far below 2^53. */
const asNumbers = {
  getTypeParser: (oid: Oid, format?: 'text' | 'binary'): unknown =>
    oid === types.builtins.INT8 && format !== 'binary' ? Number : types.getTypeParser(oid, format),
};
type Oid = Parameters<typeof types.getTypeParser>[0];

/** `schema`: where another ledger already stands in the database's own. It is made where there is none. */
export type PostgresPlace = { readonly url: string; readonly schema?: string };

export const openPostgres = async ({ url, schema }: PostgresPlace, leaseMs: number): Promise<Engine> => {
  const within = schema === undefined ? '' : `-c search_path=${schema}`;
  if (schema !== undefined) await makeSchema(url, schema);
  const writing = await connect(url, {
    migrations: MIGRATIONS,
    migrationsTableName: MIGRATIONS_TABLE,
    migrationsRun: true,
    poolSize: 1,
    extra: { types: asNumbers, idle_in_transaction_session_timeout: IDLE_IN_TRANSACTION_MS, options: within },
  });
  const reading = await connect(url, {
    poolSize: READERS,
    extra: { types: asNumbers, options: `-c default_transaction_read_only=on ${within}` },
  });
  const { sql: writer, begin, commit, rollback } = sessionOn(writing);
  const reader: Sql = {
    dialect: 'postgres',
    query: (sql, parameters) => reading.query(sql, parameters === undefined ? undefined : [...parameters]),
  };

  const lease = postgresLease(writer, leaseMs);

  return {
    writer,
    reader,
    begin,
    commit,
    rollback,
    record: async (ledger, batch) => {
      const rows = await writer
        .query(recordBatch(lease.renewal), batchColumns(ledger, batch))
        .catch(keyTaken);
      return rows.length > 0;
    },
    // A session that is cut off at its commit leaves it open whether that went through: `commit` knows to say so.
    recordsAlone: false,
    among: (column) => `${column} = ANY($1::text[])`,
    list: (texts) => texts,
    lease,
    close: async () => {
      await reading.destroy();
      await writing.destroy();
    },
  };
};

type PostgresExtras = Omit<Extract<DataSourceOptions, { type: 'postgres' }>, 'type' | 'url'>;

const connect = (url: string, extras: PostgresExtras): Promise<DataSource> =>
  new DataSource({ type: 'postgres', url, ...extras }).initialize();

const makeSchema = async (url: string, schema: string): Promise<void> => {
  const source = await connect(url, { poolSize: 1 });
  await source.query(`CREATE SCHEMA IF NOT EXISTS "${schema}"`).finally(() => source.destroy());
};

/** Where the writer row is another's, nothing is moved, so nothing is added. */
const recordBatch = (renewal: string): string => `
  WITH moved AS (
    UPDATE writer SET head = head + cardinality($4::text[])${renewal}
    WHERE plant = $1 AND epoch = $2 AND head = $3 RETURNING head
  ), recorded AS (
    INSERT INTO event (position, stream, version, body, leaf)
    SELECT $3 + place, stream, version, body, leaf
    FROM unnest($4::text[], $5::bigint[], $6::text[], $7::bytea[]) WITH ORDINALITY
      AS given (stream, version, body, leaf, place)
    WHERE EXISTS (SELECT 1 FROM moved)
  ), keyed AS (
    INSERT INTO asking (key, digest, first, events)
    SELECT * FROM unnest($8::text[], $9::bytea[], $10::bigint[], $11::bigint[])
    WHERE EXISTS (SELECT 1 FROM moved)
  )
  SELECT head FROM moved`;

const batchColumns = (ledger: string, { tenure, events, keys }: Commit): readonly unknown[] => [
  ...[ledger, tenure.epoch, tenure.head],
  events.envelopes.map(({ stream }) => stream),
  events.envelopes.map(({ version }) => version),
  events.bodies,
  events.envelopes.map((_, n) => events.leaves.subarray(n * LEAF_BYTES, (n + 1) * LEAF_BYTES)),
  keys.map(({ key }) => key),
  keys.map(({ digest }) => digest),
  keys.map(({ first }) => first),
  keys.map(({ count }) => count),
];

const keyTaken = (error: unknown): never => {
  const taken = error instanceof Error && 'constraint' in error && error.constraint === 'asking_pkey';
  throw taken ? new KeyTaken({ cause: error }) : error;
};
