import { closeSync, fsyncSync, mkdirSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { newSecret } from './signature';

/** Signing secrets lie with the plant's keys, a file each: neither the database nor its backup has them. */
export type FeedSecrets = {
  /** Shown once, by whoever made the subscription; afterwards only the feed reads it. */
  readonly make: (subscription: string) => string;
  /** Null where the keys were not restored with the rest: nothing is sent unsigned. */
  readonly of: (subscription: string) => string | null;
  readonly forget: (subscription: string) => void;
};

export const feedSecrets = (keys: string): FeedSecrets => {
  const folder = join(keys, 'feed');
  const fileOf = (subscription: string): string => join(folder, `${subscription}.secret`);
  return {
    make: (subscription) => {
      const secret = newSecret();
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      const file = openSync(fileOf(subscription), 'wx', 0o600);
      try {
        writeSync(file, secret);
        fsyncSync(file);
      } finally {
        closeSync(file);
      }
      return secret;
    },
    of: (subscription) => {
      try {
        return readFileSync(fileOf(subscription), 'utf8').trim();
      } catch (fault) {
        if (isNotThere(fault)) return null;
        throw fault;
      }
    },
    forget: (subscription) => rmSync(fileOf(subscription), { force: true }),
  };
};

/** By its code alone: an error of another realm, as under a test runner, is no instance of our own Error. */
const isNotThere = (fault: unknown): boolean =>
  typeof fault === 'object' && fault !== null && 'code' in fault && fault.code === 'ENOENT';
