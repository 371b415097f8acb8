import type { MigrationInterface, QueryRunner } from 'typeorm';

/** PINs, sessions and tokens. The first plants made these tables without a migration: hence "if not exists". */
export class SignIns implements MigrationInterface {
  readonly name = 'SignIns0000000000001';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`CREATE TABLE IF NOT EXISTS access_pin (
      person text PRIMARY KEY, hash text NOT NULL, shown text,
      failures integer NOT NULL, free_at bigint NOT NULL)`);
    await runner.query(`CREATE TABLE IF NOT EXISTS access_secret (
      hash text PRIMARY KEY, kind text NOT NULL, actor text NOT NULL, role text, name text NOT NULL,
      expires_at bigint)`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE access_secret');
    await runner.query('DROP TABLE access_pin');
  }
}
