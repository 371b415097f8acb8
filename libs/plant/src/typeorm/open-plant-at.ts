import { dirname, join } from 'node:path';
import { openKeyStore, sealingWith } from '@libs/ledger';
import { openLedger } from '@libs/ledger/typeorm';
import type { LedgerOptions } from '@libs/ledger/typeorm';
import { VIEWS } from '@libs/views';
import { viewKeeper, viewReader } from '@libs/views/typeorm';
import { openPlant } from '../open-plant';
import { photoStore } from '../photos';
import type { Plant } from '../plant';
import { provingWith } from '../proof';

export type PlantPlace = {
  readonly at: LedgerOptions['at'];
  /** Folder of the keys that personal data is sealed with. */
  readonly keys: string;
  /** Folder of the photos; left out: beside the keys. */
  readonly photos?: string;
  /** What people call it; only told when it is made. */
  readonly name: string;
  /** The ledger's id when it is made; random where not given. */
  readonly id?: string;
  /** Milliseconds since 1970, UTC. Left out: this machine's. */
  readonly clock?: () => number;
  /** Where keys and nonces come from; a demonstration that is to come out the same says so. */
  readonly random?: Parameters<typeof openKeyStore>[1];
};

/** The plant over its ledger, views caught up: as the server, the command line, the seeds and the tests open it. */
export const openPlantAt = async (place: PlantPlace): Promise<Plant> => {
  const { at, name, id, clock = Date.now, random } = place;
  const keys = openKeyStore(place.keys, random);
  const ledger = await openLedger({
    at,
    name,
    clock,
    secret: keys.digestKey,
    keepers: [],
    ...(id === undefined ? {} : { id }),
  });
  const keeper = viewKeeper(ledger, VIEWS);
  const close = (): Promise<void> => keeper.close().finally(() => ledger.close());
  try {
    await keeper.current();
    return await openPlant({
      ledger: { ...ledger, close },
      reader: ledger.reader,
      views: viewReader(keeper.reader),
      sealing: sealingWith(keys, ledger.id, random),
      proving: provingWith(ledger, place.keys),
      photos: photoStore(place.photos ?? join(dirname(place.keys), 'photos')),
      clock,
      rebuild: keeper.rebuild,
    });
  } catch (error) {
    await ledger.close();
    throw error;
  }
};
