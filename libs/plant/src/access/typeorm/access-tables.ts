import type { DataSource } from 'typeorm';
import type { AccessRows, GuessableRow, NoteRow, SecretRow } from '../access-rows';
import { factorTables, tabletTables } from './factor-tables';
import { numberOrNull, runOn } from './run';
import type { Run, Stored } from './run';

// `failures` and `free_at` are counted in a table of their own since 0003; here they stay as they were made.
const PUT_PIN = `INSERT INTO access_pin (person, hash, shown, failures, free_at) VALUES (?, ?, ?, 0, 0)
  ON CONFLICT (person) DO UPDATE SET hash = excluded.hash, shown = excluded.shown`;
const COUNT_GUESS = `INSERT INTO access_guess (person, failures, free_at) VALUES (?, ?, ?)
  ON CONFLICT (person) DO UPDATE SET failures = excluded.failures, free_at = excluded.free_at`;
const PUT_SECRET = `INSERT INTO access_secret (hash, kind, actor, role, name, made_at, seen_at, expires_at, tablet, scopes)
  VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`;

type StoredSecret = Omit<SecretRow, 'expiresAt' | 'madeAt' | 'seenAt' | 'scopes'> & {
  readonly scopes: string | null;
  readonly made_at: Stored;
  readonly seen_at: Stored;
  readonly expires_at: Stored | null;
};

const secretOf = ({ made_at, seen_at, expires_at, scopes, ...row }: StoredSecret): SecretRow => ({
  ...row,
  scopes: scopes === null ? null : (JSON.parse(scopes) as readonly string[]),
  madeAt: Number(made_at),
  seenAt: Number(seen_at),
  expiresAt: numberOrNull(expires_at),
});

type PinTables = Pick<AccessRows, 'pins' | 'pin' | 'putPin' | 'guesses' | 'countGuess'>;
type SecretTables = Pick<
  AccessRows,
  'secret' | 'secrets' | 'putSecret' | 'seen' | 'dropSecret' | 'dropSessions' | 'dropActor' | 'dropExpired'
>;
type NoteTables = Pick<AccessRows, 'note' | 'notes' | 'dropNotes'>;

const pinTables = (run: Run): PinTables => ({
  pins: () => run<GuessableRow>('SELECT person, hash, shown FROM access_pin ORDER BY person'),
  pin: async (person) =>
    (await run<GuessableRow>('SELECT person, hash, shown FROM access_pin WHERE person = ?', [person]))[0],
  putPin: async ({ person, hash, shown }) => {
    await run(PUT_PIN, [person, hash, shown]);
    await run('DELETE FROM access_guess WHERE person = ?', [person]);
  },
  guesses: async (person) => {
    const sql = 'SELECT failures, free_at FROM access_guess WHERE person = ?';
    const [row] = await run<{ readonly failures: number; readonly free_at: Stored }>(sql, [person]);
    return row && { failures: row.failures, freeAt: Number(row.free_at) };
  },
  countGuess: async (person, failures, freeAt) => {
    await run(COUNT_GUESS, [person, failures, freeAt]);
  },
});

const secretTables = (run: Run): SecretTables => {
  const change = async (sql: string, ...parameters: readonly unknown[]): Promise<void> => {
    await run(sql, parameters);
  };
  return {
    secret: async (hash) =>
      (await run<StoredSecret>('SELECT * FROM access_secret WHERE hash = ?', [hash])).map(secretOf)[0],
    secrets: async (kind) =>
      (
        await run<StoredSecret>('SELECT * FROM access_secret WHERE kind = ? ORDER BY actor, made_at', [kind])
      ).map(secretOf),
    putSecret: ({ hash, kind, actor, role, name, madeAt, seenAt, expiresAt, tablet, scopes }) =>
      change(
        PUT_SECRET,
        ...[hash, kind, actor, role, name, madeAt, seenAt, expiresAt, tablet],
        scopes === null ? null : JSON.stringify(scopes),
      ),
    seen: (hash, at) => change('UPDATE access_secret SET seen_at = ? WHERE hash = ?', at, hash),
    dropSecret: (hash) => change('DELETE FROM access_secret WHERE hash = ?', hash),
    dropSessions: (actor) => change(`DELETE FROM access_secret WHERE kind = 'session' AND actor = ?`, actor),
    dropActor: async (actor) => {
      for (const table of ['access_pin', 'access_factor', 'access_guess'])
        await change(`DELETE FROM ${table} WHERE person = ?`, actor);
      await change('DELETE FROM access_secret WHERE actor = ?', actor);
    },
    dropExpired: async (now) => {
      await change('DELETE FROM access_secret WHERE expires_at <= ?', now);
      await change('DELETE FROM access_factor WHERE expires_at <= ?', now);
      await change('DELETE FROM access_tablet WHERE expires_at <= ?', now);
    },
  };
};

const noteTables = (run: Run): NoteTables => ({
  note: async ({ key, note }) => {
    await run('INSERT INTO access_note (key, note) VALUES (?, ?)', [key, note]);
  },
  notes: (limit) => run<NoteRow>('SELECT key, note FROM access_note ORDER BY seq LIMIT ?', [limit]),
  dropNotes: async (keys) => {
    if (keys.length === 0) return;
    await run(`DELETE FROM access_note WHERE key IN (${keys.map(() => '?').join(', ')})`, keys);
  },
});

export const accessTables = (source: DataSource): AccessRows => {
  const run = runOn(source);
  return {
    ...pinTables(run),
    ...secretTables(run),
    ...noteTables(run),
    ...factorTables(run),
    ...tabletTables(run),
    close: () => source.destroy(),
  };
};
