import type { DataSource } from 'typeorm';
import type { AccessRows, PinRow, SecretRow } from '../access-rows';

const TABLES = [
  `CREATE TABLE IF NOT EXISTS access_pin (
    person text PRIMARY KEY, hash text NOT NULL, shown text,
    failures integer NOT NULL, free_at bigint NOT NULL)`,
  `CREATE TABLE IF NOT EXISTS access_secret (
    hash text PRIMARY KEY, kind text NOT NULL, actor text NOT NULL, role text, name text NOT NULL, expires_at bigint)`,
];

const PUT_PIN = `INSERT INTO access_pin (person, hash, shown, failures, free_at) VALUES (?, ?, ?, ?, ?)
  ON CONFLICT (person) DO UPDATE SET
    hash = excluded.hash, shown = excluded.shown, failures = excluded.failures, free_at = excluded.free_at`;
const PUT_SECRET =
  'INSERT INTO access_secret (hash, kind, actor, role, name, expires_at) VALUES (?, ?, ?, ?, ?, ?)';

type StoredPin = Omit<PinRow, 'freeAt'> & { readonly free_at: number | string };
type StoredSecret = Omit<SecretRow, 'expiresAt'> & { readonly expires_at: number | string | null };

const pinOf = ({ free_at, ...row }: StoredPin): PinRow => ({ ...row, freeAt: Number(free_at) });
const secretOf = ({ expires_at, ...row }: StoredSecret): SecretRow => ({
  ...row,
  expiresAt: expires_at === null ? null : Number(expires_at),
});

type Run = <T>(sql: string, parameters?: readonly unknown[]) => Promise<readonly T[]>;

/** SQL is written with `?`; PostgreSQL wants `$1`, `$2`. */
const runOn = (source: DataSource): Run => {
  const numbered = (sql: string): string => {
    let n = 0;
    return sql.replace(/\?/g, () => `$${String(++n)}`);
  };
  const asSpoken = source.options.type === 'postgres' ? numbered : (sql: string): string => sql;
  return <T>(sql: string, parameters: readonly unknown[] = []) =>
    source.query<readonly T[]>(asSpoken(sql), [...parameters]);
};

export const accessTables = async (source: DataSource): Promise<AccessRows> => {
  const run = runOn(source);
  for (const table of TABLES) await run(table);

  const change = async (sql: string, ...parameters: readonly unknown[]): Promise<void> => {
    await run(sql, parameters);
  };

  return {
    pins: async () => (await run<StoredPin>('SELECT * FROM access_pin ORDER BY person')).map(pinOf),
    pin: async (person) =>
      (await run<StoredPin>('SELECT * FROM access_pin WHERE person = ?', [person])).map(pinOf)[0],
    putPin: (row) => change(PUT_PIN, row.person, row.hash, row.shown, row.failures, row.freeAt),
    countGuess: (person, failures, freeAt) =>
      change('UPDATE access_pin SET failures = ?, free_at = ? WHERE person = ?', failures, freeAt, person),
    secret: async (hash) =>
      (await run<StoredSecret>('SELECT * FROM access_secret WHERE hash = ?', [hash])).map(secretOf)[0],
    secrets: async (kind) =>
      (await run<StoredSecret>('SELECT * FROM access_secret WHERE kind = ? ORDER BY actor', [kind])).map(
        secretOf,
      ),
    putSecret: (row) => change(PUT_SECRET, row.hash, row.kind, row.actor, row.role, row.name, row.expiresAt),
    dropSecret: (hash) => change('DELETE FROM access_secret WHERE hash = ?', hash),
    dropActor: (actor) => change('DELETE FROM access_secret WHERE actor = ?', actor),
    dropExpired: (now) => change('DELETE FROM access_secret WHERE expires_at <= ?', now),
    close: () => source.destroy(),
  };
};
