import { existsSync, readFileSync, statSync } from 'node:fs';
import { OPEN_READONLY } from 'sqlite3';
import { WrittenByAnother } from '../fault';
import { connectSqlite } from './sqlite-sql';

/** A process that writes to a file: its number, when it began where the system tells, and the file's own number. */
const HOLDER = /^process (\d+)(?: begun (\d*) file (\d+))?$/;

/**
 * Numbers of processes come again after a restart; a number and its beginning do not. A copy of the file is another
 * file, which nobody writes.
 */
export const holderNow = (file: string): string =>
  `process ${process.pid} begun ${begunAt(process.pid)} file ${numberOf(file)}`;

const numberOf = (file: string): string => String(statSync(file, { bigint: true }).ino);

/**
 * On SQLite whoever opens a ledger last becomes its writer, and the one before steps down. Nobody may do that to a
 * process that lives: it would go on answering and record nothing any more.
 */
export const assertNobodyWrites = async (file: string): Promise<void> => {
  const holder = await holderIn(file);
  const [, number, begun = '', original] = HOLDER.exec(holder ?? '') ?? [];
  if (number === undefined || Number(number) === process.pid) return;
  if (original !== undefined && original !== numberOf(file)) return;
  if (isAlive(Number(number), begun)) throw new WrittenByAnother(file, Number(number));
};

const BUSY_MS = 5_000;

const holderIn = async (file: string): Promise<string | undefined> => {
  if (!existsSync(file)) return undefined;

  const source = await connectSqlite({ database: file, flags: OPEN_READONLY, busyTimeout: BUSY_MS }, []);
  try {
    const tables = await source.query(`SELECT 1 FROM sqlite_master WHERE name = 'writer'`);
    if (tables.length === 0) return undefined;
    const [row] = await source.query<{ holder: string }>('SELECT holder FROM writer');
    return row?.holder;
  } finally {
    await source.close();
  }
};

const isAlive = (pid: number, begun: string): boolean => {
  const began = begunAt(pid);
  return began === '' || begun === '' ? answers(pid) : begun === began;
};

/** Signal 0 asks without sending. A process of somebody else's is alive too. */
const answers = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
};

/** After the name in brackets, which may hold anything: proc(5) counts the beginning as field 22, in clock ticks. */
const BEGUN = 22;
const FIELDS_BEFORE = 3;

/** Empty where the system does not tell, and for a process that is not there. */
const begunAt = (pid: number): string => {
  const path = `/proc/${pid}/stat`;
  if (!existsSync(path)) return '';
  const text = readFileSync(path, 'utf8');
  return text.slice(text.lastIndexOf(')') + 2).split(' ')[BEGUN - FIELDS_BEFORE] ?? '';
};
