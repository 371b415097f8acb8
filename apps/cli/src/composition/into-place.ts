import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { join } from 'node:path';
import { assertNobodyWrites } from '@libs/ledger/typeorm';
import { dataFolder } from '@libs/plant';
import { Usable } from '../exit-code';
import { leavesIn } from './leaves';

/** A ledger in which nothing was ever recorded may give way; any other stays as it is. */
export const assertFree = async (folder: string): Promise<void> => {
  const { ledger } = dataFolder(folder);
  if (!existsSync(ledger)) return;

  await assertNobodyWrites(ledger);
  for await (const _leaf of leavesIn(ledger)) {
    throw new Usable(
      `${folder} holds a plant already, and is left as it is. Give the demonstration a folder of its own with --data.`,
    );
  }
};

/** Moves a plant that was made whole elsewhere. The ledger comes last: with it the plant is there. */
export const moveIntoPlace = (making: string, folder: string): void => {
  ontoDisk(making);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const [from, to] = [dataFolder(making), dataFolder(folder)];
  for (const path of [to.ledger, `${to.ledger}-wal`, `${to.ledger}-shm`, to.keys]) {
    rmSync(path, { recursive: true, force: true });
  }
  renameSync(from.keys, to.keys);
  renameSync(from.ledger, to.ledger);
  onDisk(folder);
};

/** What is moved into place next is there after a power cut too. */
const ontoDisk = (folder: string): void => {
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    onDisk(join(entry.parentPath, entry.name));
  }
  onDisk(folder);
};

/** A file's content, or the names in a folder. */
const onDisk = (path: string): void => {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
};
