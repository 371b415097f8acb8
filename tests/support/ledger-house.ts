import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Database } from 'sqlite3';
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
  /** As if the writer had fallen silent long ago, so that the next one need not wait for its lease to end. */
  readonly endLease: () => Promise<void>;
  /** Closes all that was opened and takes the place away. */
  readonly clear: () => Promise<void>;
};

export const SECRET = Buffer.alloc(32, 7);

/** Moves on by a millisecond each time it is read. */
export const steadyClock = (from = Date.parse('2026-03-02T13:30:00.000Z')): (() => number) => {
  let now = from;
  return () => (now += 1);
};

type House = Pick<LedgerHouse, 'at' | 'tamper' | 'endLease'> & { readonly takeAway: () => void };

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
    endLease: () => runSql(url, `UPDATE writer SET lease_until = clock_timestamp() - interval '1 second'`),
    takeAway: () => undefined,
  });
};

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
