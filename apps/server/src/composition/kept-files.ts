import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { SettingsWrong } from './settings-wrong';

/** What group and others may do with a file. */
const OTHERS = 0o077;

/** Windows has no such bits; there the folder's own list of rights says who may read. */
const assertOurs = (path: string): void => {
  if (process.platform === 'win32' || (statSync(path).mode & OTHERS) === 0) return;
  throw new SettingsWrong(`${path} holds a secret, and others may read it. chmod go= it, then start again.`);
};

/** Every key of the plant, before anything is opened with one. A folder that is not there yet is made for us alone. */
export const assertKept = (folder: string): void => {
  if (!existsSync(folder)) return;
  for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true }))
    if (entry.isFile()) assertOurs(join(entry.parentPath, entry.name));
};

export const readTls = ({ cert, key }: { readonly cert: string; readonly key: string }) => {
  for (const path of [cert, key])
    if (!existsSync(path)) throw new SettingsWrong(`${path} is not there: it was named for TLS`);
  assertOurs(key);
  return { cert: readFileSync(cert, 'utf8'), key: readFileSync(key, 'utf8') };
};

/** From a file, so that it stands in no list of processes. Null: none is named. */
export const secretFrom = (file: string | undefined): string | null => {
  if (file === undefined) return null;
  if (!existsSync(file)) throw new SettingsWrong(`${file} is not there: it was named for a secret`);
  assertOurs(file);
  return readFileSync(file, 'utf8').trim();
};
