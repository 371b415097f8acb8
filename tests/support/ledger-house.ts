import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openLedger } from '@libs/ledger/typeorm';
import type { LedgerOptions, OpenLedger } from '@libs/ledger/typeorm';
import type { PostgresServer } from './postgres';

/** A place for one ledger, where writers may come and go as processes do. */
export type LedgerHouse = {
  readonly at: LedgerOptions['at'];
  readonly open: (options?: Partial<LedgerOptions>) => Promise<OpenLedger>;
  /** Closes all that was opened and takes the place away. */
  readonly clear: () => Promise<void>;
};

export const SECRET = Buffer.alloc(32, 7);

/** Moves on by a millisecond each time it is read. */
export const steadyClock = (from = Date.parse('2026-03-02T13:30:00.000Z')): (() => number) => {
  let now = from;
  return () => (now += 1);
};

export const houseAt = (at: LedgerOptions['at'], takeAway: () => Promise<void> | void): LedgerHouse => {
  const opened: OpenLedger[] = [];
  return {
    at,
    open: async (options = {}) => {
      const base = { at, name: 'Test plant', clock: steadyClock(), secret: SECRET, keepers: [] };
      const ledger = await openLedger({ ...base, ...options });
      opened.push(ledger);
      return ledger;
    },
    clear: async () => {
      for (const ledger of opened) await ledger.close();
      await takeAway();
    },
  };
};

export const sqliteHouse = (): LedgerHouse => {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-ledger-'));
  return houseAt({ file: join(folder, 'ledger.sqlite') }, () => {
    rmSync(folder, { recursive: true });
  });
};

export const postgresHouse = async (server: PostgresServer): Promise<LedgerHouse> =>
  houseAt({ url: await server.newDatabase() }, () => undefined);
