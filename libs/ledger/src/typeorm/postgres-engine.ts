import { types } from 'pg';
import { DataSource } from 'typeorm';
import type { DataSourceOptions } from 'typeorm';
import type { Sql } from '../port';
import type { AnsweredKey, Written } from '../writer/log-store';
import type { Engine } from './engine';
import { MIGRATIONS, MIGRATIONS_TABLE } from './migrations';
import { postgresLease } from './postgres-lease';
import { sessionOn } from './postgres-session';

/** Sessions for questions. More would only compete for the same cores. */
const READERS = 4;

/** A writer that stands still in the middle of a transaction holds the writer row; after this the server ends it. */
const IDLE_IN_TRANSACTION_MS = 10_000;

/** Positions and counts are 64-bit integers, which the driver hands over as text; ours are far below 2^53. */
const BIGINT = 20;
const asNumbers = {
  getTypeParser: (oid: number, format?: 'text' | 'binary') =>
    oid === BIGINT && format !== 'binary' ? Number : types.getTypeParser(oid, format),
};

export const openPostgres = async (url: string, leaseMs: number): Promise<Engine> => {
  const writing = await connect(url, {
    migrations: MIGRATIONS,
    migrationsTableName: MIGRATIONS_TABLE,
    migrationsRun: true,
    poolSize: 1,
    extra: { types: asNumbers, idle_in_transaction_session_timeout: IDLE_IN_TRANSACTION_MS },
  });
  const reading = await connect(url, {
    poolSize: READERS,
    extra: { types: asNumbers, options: '-c default_transaction_read_only=on' },
  });
  const { sql: writer, begin, commit, rollback } = sessionOn(writing);
  const reader: Sql = {
    dialect: 'postgres',
    query: (sql, parameters) => reading.query(sql, parameters === undefined ? undefined : [...parameters]),
  };

  return {
    writer,
    reader,
    begin,
    commit,
    rollback,
    insertEvents: async (events) => {
      await writer.query(INSERT_EVENTS, eventColumns(events));
    },
    insertKeys: async (keys) => {
      await writer.query(INSERT_KEYS, keyColumns(keys));
    },
    among: (column) => `${column} = ANY($1::text[])`,
    list: (texts) => texts,
    lease: postgresLease(writer, leaseMs),
    close: async () => {
      await reading.destroy();
      await writing.destroy();
    },
  };
};

type PostgresExtras = Omit<Extract<DataSourceOptions, { type: 'postgres' }>, 'type' | 'url'>;

const connect = (url: string, extras: PostgresExtras): Promise<DataSource> =>
  new DataSource({ type: 'postgres', url, ...extras }).initialize();

const INSERT_EVENTS = `
  INSERT INTO event (position, stream, version, body, leaf)
  SELECT * FROM unnest($1::bigint[], $2::text[], $3::bigint[], $4::text[], $5::bytea[])`;

const eventColumns = (events: readonly Written[]): readonly unknown[] => [
  events.map(({ envelope }) => envelope.position),
  events.map(({ envelope }) => envelope.stream),
  events.map(({ envelope }) => envelope.version),
  events.map(({ body }) => body),
  events.map(({ leaf }) => leaf),
];

const INSERT_KEYS = `
  INSERT INTO asking (key, digest, first, events)
  SELECT * FROM unnest($1::text[], $2::bytea[], $3::bigint[], $4::bigint[])`;

const keyColumns = (keys: readonly AnsweredKey[]): readonly unknown[] => [
  keys.map(({ key }) => key),
  keys.map(({ digest }) => digest),
  keys.map(({ first }) => first),
  keys.map(({ count }) => count),
];
