import { openKeyStore, sealingWith } from '@libs/ledger';
import { readLedger } from '@libs/ledger/typeorm';
import { dataFolder, openPlant, photoStore, provingWith } from '@libs/plant';
import type { Plant } from '@libs/plant';
import { viewReader } from '@libs/views/typeorm';
import { assertPlant, postgres } from './open-plant';

/** Only asks: the ledger's writer, most likely a running server, goes on undisturbed. */
export const readPlant = async <T>(folder: string, ask: (plant: Plant) => Promise<T>): Promise<T> => {
  const files = dataFolder(folder);
  const url = postgres();
  assertPlant(folder);
  const ledger = await readLedger(url === undefined ? { file: files.ledger } : { url });
  try {
    const plant = await openPlant({
      ledger,
      reader: ledger.reader,
      views: viewReader(ledger.reader),
      sealing: sealingWith(openKeyStore(files.keys), ledger.id),
      proving: provingWith(ledger, files.keys),
      photos: photoStore(files.photos),
      clock: Date.now,
      rebuild: () => Promise.reject(new Error('Opened for reading only')),
    });
    return await ask(plant);
  } finally {
    await ledger.close();
  }
};
