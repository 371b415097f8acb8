import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Access, AccessLog, Feed, Plant } from '@libs/plant';
import { openKeyStore } from '@libs/ledger';
import {
  accessOver,
  dataFolder,
  GUESS_COST,
  openAccessLog,
  openAccessRows,
  openPlantAt,
  vaultUnder,
} from '@libs/plant';
import type { Log } from '../http/log';
import { publishCheckpoints } from './checkpoint-schedule';
import { openFeedFor } from './open-feed-for';
import type { Settings } from './settings';

export type OpenParts = {
  readonly plant: Plant;
  readonly access: Access;
  readonly accessLog: AccessLog;
  readonly feed: Feed;
  readonly engine: 'sqlite' | 'postgres';
  readonly close: () => Promise<void>;
};

/** The schema of the second ledger where both stand in one PostgreSQL database. */
const ACCESSES = 'studbook_accesses';

/** The plant, who may sign in to it and who did, over the database the settings name. */
export const openParts = async (settings: Settings, log: Log): Promise<OpenParts> => {
  const { data, databaseUrl } = settings;
  const files = dataFolder(data);
  mkdirSync(data, { recursive: true, mode: 0o700 });

  const opened: (() => Promise<void>)[] = [];
  const close = async (): Promise<void> => {
    for (const closeOne of opened.splice(0).reverse()) await closeOne();
  };
  try {
    const plant = await openPlantAt({
      at: databaseUrl === null ? { file: files.ledger } : { url: databaseUrl },
      keys: files.keys,
      photos: files.photos,
      name: 'Studbook',
    });
    opened.push(() => plant.close());
    const feed = await openFeedFor(settings, plant, log);
    opened.push(() => feed.close());
    const stopPublishing = publishCheckpoints(plant, { folder: join(data, 'checkpoints'), feed, log });
    opened.push(() => Promise.resolve().then(stopPublishing));

    const rows = await openAccessRows(
      databaseUrl === null ? { sqlite: files.access } : { postgres: databaseUrl },
    );
    const vault = vaultUnder(openKeyStore(files.keys).digestKey);
    const access = accessOver(rows, Date.now, GUESS_COST, vault);
    opened.push(() => access.close());

    const accessLog = await openAccessLog(
      {
        at: databaseUrl === null ? { file: files.accessLog } : { url: databaseUrl, schema: ACCESSES },
        keys: files.keys,
        trouble: (fault) => log('accesses-not-recorded', { fault: String(fault) }),
      },
      { rows, notes: access.notes },
    );
    opened.push(() => accessLog.close());

    return { plant, access, accessLog, feed, engine: databaseUrl === null ? 'sqlite' : 'postgres', close };
  } catch (fault) {
    await close();
    throw fault;
  }
};
