import { closeSync, fsyncSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';

/** On disk when it returns, name and content both. `wx` makes a new file only, `a` adds to the end. */
export const writeDurably = (folder: string, name: string, text: string, flag: 'wx' | 'a'): void => {
  const file = openSync(join(folder, name), flag, 0o600);
  try {
    writeSync(file, text);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  syncFolder(folder);
};

/** Gone from disk when it returns. Erasing what is not there is no error: it may be a second try. */
export const eraseDurably = (folder: string, name: string): void => {
  rmSync(join(folder, name), { force: true });
  syncFolder(folder);
};

export const textIfThere = (path: string): string | undefined => {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if (isNotThere(error)) return undefined;
    throw error;
  }
};

/** By its code alone: an error of another realm, as under a test runner, is no instance of our own Error. */
const isNotThere = (error: unknown): boolean =>
  typeof error === 'object' && error !== null && 'code' in error && error.code === 'ENOENT';

/** A file's name lives in its folder: without this a crash may lose the name of a file that is itself on disk. */
const syncFolder = (folder: string): void => {
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
};
