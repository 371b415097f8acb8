import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Subscriptions with how far each was served, news that is not in the ledger, and what was given up. */
export class Feed implements MigrationInterface {
  readonly name = 'Feed0000000000001';

  async up(runner: QueryRunner): Promise<void> {
    const serial =
      runner.connection.options.type === 'postgres'
        ? 'bigserial PRIMARY KEY'
        : 'integer PRIMARY KEY AUTOINCREMENT';
    await runner.query('CREATE TABLE feed_subscription (id text PRIMARY KEY, detail text NOT NULL)');
    await runner.query(`CREATE TABLE feed_notice (
      seq ${serial}, id text NOT NULL UNIQUE, kind text NOT NULL, subject text NOT NULL, at text NOT NULL,
      data text NOT NULL)`);
    await runner.query(
      `CREATE TABLE feed_letter (id text PRIMARY KEY, subscription text NOT NULL, detail text NOT NULL)`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const table of ['feed_letter', 'feed_notice', 'feed_subscription'])
      await runner.query(`DROP TABLE ${table}`);
  }
}

/** In order. A released one is never edited; a change is a new one. */
export const FEED_MIGRATIONS = [Feed];
export const FEED_MIGRATIONS_TABLE = 'feed_migration';
