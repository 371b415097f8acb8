import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Feed, Plant } from '@libs/plant';
import type { Log } from '../http/log';

/** A plant builds a few sections a day: once a day is often enough for someone outside to hold the plant to it. */
const EVERY_MS = 24 * 60 * 60 * 1000;
/** Not in the first rush of tablets that come back after a restart. */
const FIRST_AFTER_MS = 60 * 1000;

/**
 * Signs how the ledger stands, day by day, lays it in a folder from where it can be sent out of the plant, and sends it
 * to whoever subscribed to checkpoints. A day on
 * which nothing was recorded gives the same checkpoint again, and no new file.
 */
export const publishCheckpoints = (
  plant: Pick<Plant, 'head' | 'proof'>,
  {
    folder,
    feed,
    log,
  }: { readonly folder: string; readonly feed: Pick<Feed, 'noteCheckpoint'>; readonly log: Log },
): (() => void) => {
  const publish = (): void => {
    void publishOne(plant, folder, feed).catch((fault: unknown) =>
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
  feed?: Pick<Feed, 'noteCheckpoint'>,
): Promise<string | undefined> => {
  if ((await plant.head()) === 0) return undefined;
  const { size, note, sha256 } = await plant.proof.checkpoint();
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${String(size).padStart(9, '0')}.txt`);
  writeFileSync(`${file}.part`, note);
  renameSync(`${file}.part`, file);
  await feed?.noteCheckpoint({ size, note, sha256 });
  return file;
};
