import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Passwords, codes, passkeys, invitations, and the tablets that PINs count on. */
export class FactorsAndTablets implements MigrationInterface {
  readonly name = 'FactorsAndTablets0000000000003';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE access_secret ADD COLUMN tablet text');
    // JSON; null: all that its role may.
    await runner.query('ALTER TABLE access_secret ADD COLUMN scopes text');
    // One count a person, whatever is guessed at: before, PINs had their own.
    await runner.query(`CREATE TABLE access_guess (
      person text PRIMARY KEY, failures integer NOT NULL, free_at bigint NOT NULL)`);
    await runner.query(`INSERT INTO access_guess (person, failures, free_at)
      SELECT person, failures, free_at FROM access_pin WHERE failures > 0`);
    await runner.query(`CREATE TABLE access_factor (
      id text PRIMARY KEY, person text NOT NULL, kind text NOT NULL, name text NOT NULL, data text NOT NULL,
      made_at bigint NOT NULL, used bigint NOT NULL, expires_at bigint)`);
    await runner.query('CREATE INDEX access_factor_person ON access_factor (person)');
    await runner.query(`CREATE TABLE access_tablet (
      tablet text PRIMARY KEY, name text NOT NULL, stations text NOT NULL, hash text NOT NULL,
      bound integer NOT NULL, made_at bigint NOT NULL, seen_at bigint NOT NULL, expires_at bigint)`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE access_tablet');
    await runner.query('DROP TABLE access_factor');
    await runner.query('DROP TABLE access_guess');
    await runner.query('ALTER TABLE access_secret DROP COLUMN scopes');
    await runner.query('ALTER TABLE access_secret DROP COLUMN tablet');
  }
}
