import type { Feed, Plant } from '@libs/plant';
import { dataFolder, feedSecrets, mailOver, openFeed, openFeedRows, reachWith } from '@libs/plant';
import type { Log } from '../http/log';
import type { Settings } from './settings';

/** The plant's outgoing news, by the settings: where it may be posted to, and who carries its letters. */
export const openFeedFor = async (settings: Settings, plant: Plant, log: Log): Promise<Feed> => {
  const files = dataFolder(settings.data);
  const { databaseUrl, feedNetworks = [], mail = null } = settings;
  return openFeed({
    rows: await openFeedRows(databaseUrl === null ? { sqlite: files.feed } : { postgres: databaseUrl }),
    tail: plant.tail,
    asks: plant.asks,
    secrets: feedSecrets(files.keys),
    reach: reachWith(feedNetworks),
    mail: mail === null ? null : mailOver(mail),
    clock: Date.now,
    isOurs: plant.writes,
    trouble: (fault) => log('feed-not-served', { fault: String(fault) }),
  });
};
