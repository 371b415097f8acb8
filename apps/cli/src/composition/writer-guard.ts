import { existsSync } from 'node:fs';
import { QUIET_DRIVER } from '@libs/ledger/typeorm';
import { DataSource } from 'typeorm';
import { OPEN_READONLY } from 'sqlite3';
import { Usable } from '../exit-code';

/** How the ledger writes down who holds its writer row on SQLite. */
const HOLDER = /^process (\d+)$/;

/**
 * On SQLite whoever opens a ledger last becomes its writer, and the one before steps down. A command must never do that
 * to a running server: it looks who holds the row, and goes no further while that process lives.
 */
export const assertNobodyWrites = async (ledgerFile: string): Promise<void> => {
  const holder = await holderOf(ledgerFile);
  if (holder === undefined || holder === process.pid || !isAlive(holder)) return;

  throw new Usable(
    `${ledgerFile} is being written by process ${holder}, most likely the server. ` +
      'Stop it first (Ctrl-C where it runs); this command would take its place. Reading with `studbook history` ' +
      'needs no stop.',
  );
};

const holderOf = async (file: string): Promise<number | undefined> => {
  if (!existsSync(file)) return undefined;

  const source = await new DataSource({
    type: 'sqlite',
    database: file,
    flags: OPEN_READONLY,
    driver: QUIET_DRIVER,
  }).initialize();
  try {
    const tables: unknown[] = await source.query(`SELECT 1 FROM sqlite_master WHERE name = 'writer'`);
    if (tables.length === 0) return undefined;
    const [row]: { holder: string }[] = await source.query('SELECT holder FROM writer');
    const found = HOLDER.exec(row?.holder ?? '');
    return found === null ? undefined : Number(found[1]);
  } finally {
    await source.destroy();
  }
};

/** Signal 0 asks without sending. A process of somebody else's is alive too. */
const isAlive = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
};
