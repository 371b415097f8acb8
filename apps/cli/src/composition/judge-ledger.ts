import { existsSync } from 'node:fs';
import { openSigningKeys } from '@libs/ledger';
import { readLedger, verifyLedger } from '@libs/ledger/typeorm';
import { dataFolder, signingFolder } from '@libs/plant';
import { Usable } from '../exit-code';
import { judged } from './judge-packet';
import type { Judged } from './judge-packet';
import { postgres } from './open-plant';

/** Only reads: a running server is not disturbed. Through no view and no cache, but from the rows themselves. */
export const judgeLedger = async (
  folder: string,
  progress: (position: number, head: number) => void,
): Promise<Judged> => {
  const files = dataFolder(folder);
  const url = postgres();
  if (url === undefined && !existsSync(files.ledger))
    throw new Usable(`${folder} holds no plant. Say where it lies with --data.`);

  const ledger = await readLedger(url === undefined ? { file: files.ledger } : { url });
  try {
    const keys = openSigningKeys(signingFolder(files.keys), ledger.id).known();
    return judged(await verifyLedger({ sql: ledger.reader, keys, progress }));
  } finally {
    await ledger.close();
  }
};
