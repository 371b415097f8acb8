import { mkdirSync } from 'node:fs';
import { openKeyStore, sealingWith } from '@libs/ledger';
import { openLedger } from '@libs/ledger/typeorm';
import type { OpenLedger } from '@libs/ledger/typeorm';
import { dataFolder, openPlant, photoStore, provingWith } from '@libs/plant';
import type { Plant, PlantPlace } from '@libs/plant';
import { VIEWS } from '@libs/views';
import { catchUp, viewReader } from '@libs/views/typeorm';
import { postgres } from './open-plant';

type Place = Pick<PlantPlace, 'id' | 'clock' | 'random'> & {
  readonly folder: string;
  /** Thrown away unless it is finished, so that nothing need be on disk before. */
  readonly inMaking?: boolean;
};
type ViewsProgress = (position: number, head: number) => void;

/**
 * Tells much history at once. The views are left behind meanwhile and caught up at the end: keeping them at every
 * commit would take longer than telling. A crash in between costs nothing, whoever opens the plant next catches up.
 */
export const tellMuch = async <T>(
  place: Place,
  tell: (plant: Plant) => Promise<T>,
  progress: ViewsProgress,
): Promise<T> => {
  const files = dataFolder(place.folder);
  const url = postgres();
  mkdirSync(place.folder, { recursive: true, mode: 0o700 });
  const keys = openKeyStore(files.keys, place.random);
  const ledger = await openLedger({
    at: url === undefined ? { file: files.ledger } : { url },
    name: 'Studbook',
    ...(place.id === undefined ? {} : { id: place.id }),
    clock: place.clock ?? Date.now,
    secret: keys.digestKey,
    keepers: [],
    ...(place.inMaking === true ? { inMaking: true } : {}),
  });
  try {
    // Once before, too: questions asked in between find tables, if not the latest in them.
    await caughtUp(ledger, progress);
    const told = await tell(await plantOver(ledger, place, keys));
    await caughtUp(ledger, progress);
    return told;
  } finally {
    await ledger.close();
  }
};

const caughtUp = (ledger: OpenLedger, progress: ViewsProgress): Promise<void> =>
  catchUp(ledger, VIEWS, progress);

const plantOver = (
  ledger: OpenLedger,
  { folder, clock = Date.now, random }: Place,
  keys: ReturnType<typeof openKeyStore>,
): Promise<Plant> =>
  openPlant({
    ledger,
    reader: ledger.reader,
    views: viewReader(ledger.reader),
    sealing: sealingWith(keys, ledger.id, random),
    proving: provingWith(ledger, dataFolder(folder).keys),
    photos: photoStore(dataFolder(folder).photos),
    clock,
    rebuild: () => Promise.reject(new Error('The views are caught up when all is told')),
  });
