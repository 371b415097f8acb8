import type { DataSource } from 'typeorm';
import type { AccessRows, GuessableRow, NoteRow, SecretRow } from '../access-rows';

const PUT_PIN = `INSERT INTO access_pin (person, hash, shown, failures, free_at) VALUES (?, ?, ?, ?, ?)
  ON CONFLICT (person) DO UPDATE SET
    hash = excluded.hash, shown = excluded.shown, failures = excluded.failures, free_at = excluded.free_at`;
const PUT_SECRET = `INSERT INTO access_secret (hash, kind, actor, role, name, made_at, seen_at, expires_at)
  VALUES (?, ?, ?, ?, ?, ?, ?, ?)`;

type Stored = number | string;
type StoredPin = Omit<GuessableRow, 'freeAt'> & { readonly free_at: Stored };
type StoredSecret = Omit<SecretRow, 'expiresAt' | 'madeAt' | 'seenAt'> & {
  readonly made_at: Stored;
  readonly seen_at: Stored;
  readonly expires_at: Stored | null;
};

const pinOf = ({ free_at, ...row }: StoredPin): GuessableRow => ({ ...row, freeAt: Number(free_at) });
const secretOf = ({ made_at, seen_at, expires_at, ...row }: StoredSecret): SecretRow => ({
  ...row,
  madeAt: Number(made_at),
  seenAt: Number(seen_at),
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

export const accessTables = (source: DataSource): AccessRows => {
  const run = runOn(source);
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
      (
        await run<StoredSecret>('SELECT * FROM access_secret WHERE kind = ? ORDER BY actor, made_at', [kind])
      ).map(secretOf),
    putSecret: ({ hash, kind, actor, role, name, madeAt, seenAt, expiresAt }) =>
      change(PUT_SECRET, hash, kind, actor, role, name, madeAt, seenAt, expiresAt),
    seen: (hash, at) => change('UPDATE access_secret SET seen_at = ? WHERE hash = ?', at, hash),
    dropSecret: (hash) => change('DELETE FROM access_secret WHERE hash = ?', hash),
    dropActor: async (actor) => {
      await change('DELETE FROM access_pin WHERE person = ?', actor);
      await change('DELETE FROM access_secret WHERE actor = ?', actor);
    },
    dropExpired: (now) => change('DELETE FROM access_secret WHERE expires_at <= ?', now),
    note: ({ key, note }) => change('INSERT INTO access_note (key, note) VALUES (?, ?)', key, note),
    notes: (limit) => run<NoteRow>('SELECT key, note FROM access_note ORDER BY seq LIMIT ?', [limit]),
    dropNotes: async (keys) => {
      for (const key of keys) await change('DELETE FROM access_note WHERE key = ?', key);
    },
    close: () => source.destroy(),
  };
};
