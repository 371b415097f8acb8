import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Tiles of the tree over all leaves, and the checkpoints that were signed. Both only grow, like the log itself. */
export class TreeAndCheckpoints implements MigrationInterface {
  readonly name = 'TreeAndCheckpoints0000000000003';

  async up(runner: QueryRunner): Promise<void> {
    const statements = runner.connection.options.type === 'postgres' ? POSTGRES : SQLITE;
    for (const statement of statements) await runner.query(statement);
  }

  /** A checkpoint may be in somebody's hands. */
  down(): Promise<void> {
    return Promise.reject(new Error('Checkpoints cannot be undone: people outside hold them'));
  }
}

const APPEND_ONLY = ['tile', 'checkpoint'] as const;

/** `root`: over the tile's own hashes, so that the tile above is put together without opening those below. */
const SQLITE = [
  `CREATE TABLE tile (
     level INTEGER NOT NULL,
     number INTEGER NOT NULL,
     root BLOB NOT NULL,
     hashes BLOB NOT NULL,
     UNIQUE (level, number)
   ) STRICT`,
  `CREATE TABLE checkpoint (
     size INTEGER PRIMARY KEY,
     note TEXT NOT NULL
   ) STRICT`,
  ...APPEND_ONLY.flatMap((table) =>
    ['UPDATE', 'DELETE'].map(
      (verb) => `CREATE TRIGGER ${table}_refuses_${verb.toLowerCase()} BEFORE ${verb} ON ${table}
        BEGIN SELECT RAISE(ABORT, 'The ledger only grows: ${verb} on ${table} is refused'); END`,
    ),
  ),
];

const POSTGRES = [
  `CREATE TABLE tile (
     level BIGINT NOT NULL,
     number BIGINT NOT NULL,
     root BYTEA NOT NULL,
     hashes BYTEA NOT NULL,
     PRIMARY KEY (level, number)
   )`,
  `CREATE TABLE checkpoint (
     size BIGINT PRIMARY KEY,
     note TEXT NOT NULL
   )`,
  // Hashes do not compress; trying costs time on every write.
  'ALTER TABLE tile ALTER COLUMN hashes SET STORAGE EXTERNAL',
  ...APPEND_ONLY.map(
    (table) => `CREATE TRIGGER ${table}_only_grows BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
      FOR EACH STATEMENT EXECUTE FUNCTION ledger_only_grows()`,
  ),
];
