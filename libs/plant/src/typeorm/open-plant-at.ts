import { openKeyStore, sealingWith } from '@libs/ledger';
import { openLedger } from '@libs/ledger/typeorm';
import type { LedgerOptions } from '@libs/ledger/typeorm';
import { VIEWS } from '@libs/views';
import { catchUp, rebuild, viewKeeper, viewReader } from '@libs/views/typeorm';
import { openPlant } from '../open-plant';
import type { Plant } from '../plant';

export type PlantPlace = {
  readonly at: LedgerOptions['at'];
  /** Folder of the keys that personal data is sealed with. */
  readonly keys: string;
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
  const keeper = viewKeeper(VIEWS);
  const kept = { views: VIEWS, keeper };
  const ledger = await openLedger({
    at,
    name,
    clock,
    secret: keys.digestKey,
    keepers: [keeper],
    ...(id === undefined ? {} : { id }),
  });
  try {
    await catchUp(ledger, kept, () => undefined);
    return await openPlant({
      ledger,
      reader: ledger.reader,
      views: viewReader(ledger.reader),
      sealing: sealingWith(keys, ledger.id, random),
      clock,
      rebuild: (progress) => rebuild(ledger, kept, progress),
    });
  } catch (error) {
    await ledger.close();
    throw error;
  }
};
