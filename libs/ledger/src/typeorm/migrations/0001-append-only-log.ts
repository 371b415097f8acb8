import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The log, the keys it was told under, its identity, and the row that says who may write. */
export class AppendOnlyLog implements MigrationInterface {
  readonly name = 'AppendOnlyLog0000000000001';

  async up(runner: QueryRunner): Promise<void> {
    const statements = runner.connection.options.type === 'postgres' ? POSTGRES : SQLITE;
    for (const statement of statements) await runner.query(statement);
  }

  /** A ledger is never taken back. */
  down(): Promise<void> {
    return Promise.reject(new Error('The ledger cannot be undone: it may only grow'));
  }
}

const APPEND_ONLY = ['ledger', 'event', 'asking'] as const;

const SQLITE = [
  `CREATE TABLE ledger (
     one INTEGER PRIMARY KEY CHECK (one = 1),
     id TEXT NOT NULL,
     name TEXT NOT NULL
   ) STRICT`,
  `CREATE TABLE writer (
     plant TEXT PRIMARY KEY,
     epoch INTEGER NOT NULL,
     head INTEGER NOT NULL,
     holder TEXT NOT NULL,
     lease_until TEXT
   ) STRICT, WITHOUT ROWID`,
  `CREATE TABLE event (
     position INTEGER PRIMARY KEY,
     stream TEXT NOT NULL,
     version INTEGER NOT NULL,
     body TEXT NOT NULL,
     leaf BLOB NOT NULL,
     UNIQUE (stream, version)
   ) STRICT`,
  `CREATE TABLE asking (
     key TEXT PRIMARY KEY,
     digest BLOB NOT NULL,
     first INTEGER NOT NULL,
     events INTEGER NOT NULL
   ) STRICT, WITHOUT ROWID`,
  ...APPEND_ONLY.flatMap((table) =>
    ['UPDATE', 'DELETE'].map(
      (verb) => `CREATE TRIGGER ${table}_refuses_${verb.toLowerCase()} BEFORE ${verb} ON ${table}
        BEGIN SELECT RAISE(ABORT, 'The ledger only grows: ${verb} on ${table} is refused'); END`,
    ),
  ),
];

/** Text is compared by code point, as SQLite does it: the order of streams must not hang on a locale. */
const POSTGRES = [
  `CREATE TABLE ledger (
     one INTEGER PRIMARY KEY CHECK (one = 1),
     id TEXT NOT NULL,
     name TEXT NOT NULL
   )`,
  `CREATE TABLE writer (
     plant TEXT PRIMARY KEY,
     epoch BIGINT NOT NULL,
     head BIGINT NOT NULL,
     holder TEXT NOT NULL,
     lease_until TIMESTAMPTZ
   )`,
  `CREATE TABLE event (
     position BIGINT PRIMARY KEY,
     stream TEXT COLLATE "C" NOT NULL,
     version BIGINT NOT NULL,
     body TEXT NOT NULL,
     leaf BYTEA NOT NULL,
     UNIQUE (stream, version)
   )`,
  `CREATE TABLE asking (
     key TEXT COLLATE "C" PRIMARY KEY,
     digest BYTEA NOT NULL,
     first BIGINT NOT NULL,
     events BIGINT NOT NULL
   )`,
  `CREATE FUNCTION ledger_only_grows() RETURNS trigger LANGUAGE plpgsql AS $$
     BEGIN RAISE EXCEPTION 'The ledger only grows: % on % is refused', TG_OP, TG_TABLE_NAME; END $$`,
  ...APPEND_ONLY.map(
    (table) => `CREATE TRIGGER ${table}_only_grows BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
      FOR EACH STATEMENT EXECUTE FUNCTION ledger_only_grows()`,
  ),
];
