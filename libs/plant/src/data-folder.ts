import { join } from 'node:path';

/** Where a plant on SQLite keeps what, in one folder: the server and the command line look in the same places. */
export type DataFolder = {
  readonly ledger: string;
  /** Keys of sealed personal data; to be backed up apart from the rest. */
  readonly keys: string;
  /** Photos, each under its SHA-256. */
  readonly photos: string;
  /** Who may sign in. */
  readonly access: string;
  /** Who came in, who was kept out, who was given access. */
  readonly accessLog: string;
  /** Who is sent what of the plant's news, and how far each was served. */
  readonly feed: string;
};

export const dataFolder = (folder: string): DataFolder => ({
  ledger: join(folder, 'ledger.db'),
  keys: join(folder, 'keys'),
  photos: join(folder, 'photos'),
  access: join(folder, 'access.db'),
  accessLog: join(folder, 'accesses.db'),
  feed: join(folder, 'feed.db'),
});
