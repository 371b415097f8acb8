import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plant } from '@libs/plant';
import type { Log } from '../http/log';

/** A plant builds a few sections a day: once a day is often enough for someone outside to hold the plant to it. */
const EVERY_MS = 24 * 60 * 60 * 1000;
/** Not in the first rush of tablets that come back after a restart. */
const FIRST_AFTER_MS = 60 * 1000;

/**
 * Signs how the ledger stands, day by day, and lays it in a folder from where it can be sent out of the plant. A day on
 * which nothing was recorded gives the same checkpoint again, and no new file.
 */
export const publishCheckpoints = (
  plant: Pick<Plant, 'head' | 'proof'>,
  folder: string,
  log: Log,
): (() => void) => {
  const publish = (): void => {
    void publishOne(plant, folder).catch((fault: unknown) =>
      log('checkpoint-not-signed', { fault: String(fault) }),
    );
  };
  const first = setTimeout(publish, FIRST_AFTER_MS).unref();
  const daily = setInterval(publish, EVERY_MS).unref();
  return () => {
    clearTimeout(first);
    clearInterval(daily);
  };
};

/** Undefined where there is nothing to sign yet. */
export const publishOne = async (
  plant: Pick<Plant, 'head' | 'proof'>,
  folder: string,
): Promise<string | undefined> => {
  if ((await plant.head()) === 0) return undefined;
  const { size, note } = await plant.proof.checkpoint();
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${String(size).padStart(9, '0')}.txt`);
  writeFileSync(`${file}.part`, note);
  renameSync(`${file}.part`, file);
  return file;
};
