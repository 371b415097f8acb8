import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client, types } from 'pg';
import { Database } from 'sqlite3';
import type { Sql } from '@libs/ledger';
import { openLedger } from '@libs/ledger/typeorm';
import type { LedgerOptions, OpenLedger } from '@libs/ledger/typeorm';
import { runSql } from './postgres';
import type { PostgresServer } from './postgres';

/** A place for one ledger, where writers may come and go as processes do. */
export type LedgerHouse = {
  readonly at: LedgerOptions['at'];
  readonly open: (options?: Partial<LedgerOptions>) => Promise<OpenLedger>;
  /** What someone with the database's own tools does, past the ledger. */
  readonly tamper: (sql: string) => Promise<void>;
  /** The database's owner, to whom no trigger is holy. */
  readonly owner: () => Promise<Owner>;
  /** As if the writer had fallen silent long ago, so that the next one need not wait for its lease to end. */
  readonly endLease: () => Promise<void>;
  /** Closes all that was opened and takes the place away. */
  readonly clear: () => Promise<void>;
};

/** Somebody with all rights in the database: triggers are gone, and every edit is taken back after a look at it. */
export type Owner = {
  readonly sql: Sql;
  readonly trying: <T>(statements: readonly string[], look: () => Promise<T>) => Promise<T>;
  readonly close: () => Promise<void>;
};

export const SECRET = Buffer.alloc(32, 7);

/** Moves on by a millisecond each time it is read. */
export const steadyClock = (from = Date.parse('2026-03-02T13:30:00.000Z')): (() => number) => {
  let now = from;
  return () => (now += 1);
};

type House = Pick<LedgerHouse, 'at' | 'tamper' | 'owner' | 'endLease'> & { readonly takeAway: () => void };

const houseOf = ({ takeAway, ...house }: House): LedgerHouse => {
  const opened: OpenLedger[] = [];
  return {
    ...house,
    open: async (options = {}) => {
      const base = { at: house.at, name: 'Test plant', clock: steadyClock(), secret: SECRET, keepers: [] };
      const ledger = await openLedger({ ...base, ...options });
      opened.push(ledger);
      return ledger;
    },
    clear: async () => {
      for (const ledger of opened) await ledger.close();
      takeAway();
    },
  };
};

export const sqliteHouse = (): LedgerHouse => {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-ledger-'));
  const file = join(folder, 'ledger.sqlite');
  return houseOf({
    at: { file },
    tamper: (sql) => runOnFile(file, sql),
    owner: () => ownerOfFile(file),
    endLease: () => Promise.resolve(),
    takeAway: () => {
      rmSync(folder, { recursive: true });
    },
  });
};

export const postgresHouse = async (server: PostgresServer): Promise<LedgerHouse> => {
  const url = await server.newDatabase();
  return houseOf({
    at: { url },
    tamper: (sql) => runSql(url, sql),
    owner: () => ownerOfDatabase(url),
    endLease: () => runSql(url, `UPDATE writer SET lease_until = clock_timestamp() - interval '1 second'`),
    takeAway: () => undefined,
  });
};

const TABLES = ['event', 'tile', 'checkpoint'] as const;

const ownerWith = async (sql: Sql, drops: readonly string[], close: () => Promise<void>): Promise<Owner> => {
  for (const drop of drops) await sql.query(drop);
  return {
    sql,
    close,
    trying: async (statements, look) => {
      await sql.query('BEGIN');
      try {
        for (const statement of statements) await sql.query(statement);
        return await look();
      } finally {
        await sql.query('ROLLBACK');
      }
    },
  };
};

const ownerOfFile = (file: string): Promise<Owner> => {
  const database = new Database(file);
  const sql: Sql = {
    dialect: 'sqlite',
    query: <T>(text: string, parameters: readonly unknown[] = []) =>
      new Promise<readonly T[]>((done, fail) => {
        database.all<T>(text.replace(/\$(\d+)/g, '?$1'), parameters, (error, rows) => {
          if (error === null) done(rows);
          else fail(error);
        });
      }),
  };
  const drops = TABLES.flatMap((table) =>
    ['update', 'delete'].map((verb) => `DROP TRIGGER ${table}_refuses_${verb}`),
  );
  return ownerWith(sql, drops, () => settled((done) => database.close(done)));
};

const ownerOfDatabase = async (url: string): Promise<Owner> => {
  const client = new Client({ connectionString: url, types: { getTypeParser: numbersForBigint } });
  await client.connect();
  const sql: Sql = {
    dialect: 'postgres',
    query: async <T>(text: string, parameters: readonly unknown[] = []) =>
      (await client.query(text, [...parameters])).rows as T[],
  };
  return ownerWith(
    sql,
    TABLES.map((table) => `DROP TRIGGER ${table}_only_grows ON ${table}`),
    () => client.end(),
  );
};

/** As the ledger's own sessions have it. */
type Oid = Parameters<typeof types.getTypeParser>[0];
const numbersForBigint = (oid: Oid, format?: 'text' | 'binary'): unknown =>
  oid === types.builtins.INT8 ? Number : types.getTypeParser(oid, format);

const runOnFile = async (file: string, sql: string): Promise<void> => {
  const database = new Database(file);
  try {
    await settled((done) => database.exec(sql, done));
  } finally {
    await settled((done) => {
      database.close(done);
    });
  }
};

const settled = (call: (done: (error: Error | null) => void) => void): Promise<void> =>
  new Promise((done, fail) => {
    call((error) => {
      if (error === null) done();
      else fail(error);
    });
  });
