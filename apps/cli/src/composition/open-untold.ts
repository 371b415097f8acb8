import { openKeyStore, sealingWith } from '@libs/ledger';
import type { RandomBytes } from '@libs/ledger';
import { openLedger } from '@libs/ledger/typeorm';
import { dataFolder, openPlant } from '@libs/plant';
import type { Plant } from '@libs/plant';
import { VIEWS } from '@libs/views';
import { catchUp, viewKeeper, viewReader } from '@libs/views/typeorm';

export type Untold = {
  readonly folder: string;
  readonly id: string;
  readonly clock: () => number;
  readonly random: RandomBytes;
};

/**
 * A plant whose views are left behind while its whole history is told, and caught up in one go when it is opened
 * next: keeping them at every commit would take longer than telling.
 */
export const openUntold = async ({ folder, id, clock, random }: Untold): Promise<Plant> => {
  const files = dataFolder(folder);
  const keys = openKeyStore(files.keys, random);
  const ledger = await openLedger({
    at: { file: files.ledger },
    name: 'Studbook',
    id,
    clock,
    secret: keys.digestKey,
    keepers: [],
  });
  // Their tables are made now, while there is nothing to read: questions find them, and find nothing in them.
  await catchUp(ledger, { views: VIEWS, keeper: viewKeeper(VIEWS) }, () => undefined);
  return openPlant({
    ledger,
    reader: ledger.reader,
    views: viewReader(ledger.reader),
    sealing: sealingWith(keys, ledger.id, random),
    clock,
    rebuild: () => Promise.reject(new Error('Its views are made when the plant is opened next')),
  });
};
