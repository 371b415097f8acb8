import { existsSync, rmSync, rmdirSync, readdirSync } from 'node:fs';
import { dataFolder } from '@libs/plant';
import { postgres } from './open-plant';

/**
 * What was made in a folder for work that then told nothing, taken away again: a file that could not be read leaves no
 * empty plant behind. What was there before stays. On PostgreSQL whoever made the database looks after it.
 */
export const unlessTold = async <T>(folder: string, work: (told: () => void) => Promise<T>): Promise<T> => {
  const { ledger, keys } = dataFolder(folder);
  const made = [keys, ledger, `${ledger}-wal`, `${ledger}-shm`].filter((path) => !existsSync(path));
  const isNew = postgres() === undefined && made.includes(ledger);
  const state = { isTold: false };
  try {
    return await work(() => {
      state.isTold = true;
    });
  } catch (error) {
    if (isNew && !state.isTold) takeAway(folder, made);
    throw error;
  }
};

const takeAway = (folder: string, made: readonly string[]): void => {
  for (const path of made) rmSync(path, { recursive: true, force: true });
  if (existsSync(folder) && readdirSync(folder).length === 0) rmdirSync(folder);
};
