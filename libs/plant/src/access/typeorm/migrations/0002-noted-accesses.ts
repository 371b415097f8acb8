import type { MigrationInterface, QueryRunner } from 'typeorm';

/** When a secret was made and last seen, and what is on its way to the ledger of accesses. */
export class NotedAccesses implements MigrationInterface {
  readonly name = 'NotedAccesses0000000000002';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE access_secret ADD COLUMN made_at bigint NOT NULL DEFAULT 0');
    await runner.query('ALTER TABLE access_secret ADD COLUMN seen_at bigint NOT NULL DEFAULT 0');
    // PINs were hashed otherwise before; whoever has one of those is given a new one.
    await runner.query(`DELETE FROM access_pin WHERE hash LIKE 'scrypt%'`);
    await runner.query(
      runner.connection.options.type === 'postgres'
        ? `CREATE TABLE access_note (seq bigserial PRIMARY KEY, key text NOT NULL UNIQUE, note text NOT NULL)`
        : `CREATE TABLE access_note (
             seq integer PRIMARY KEY AUTOINCREMENT, key text NOT NULL UNIQUE, note text NOT NULL)`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE access_note');
    await runner.query('ALTER TABLE access_secret DROP COLUMN seen_at');
    await runner.query('ALTER TABLE access_secret DROP COLUMN made_at');
  }
}
