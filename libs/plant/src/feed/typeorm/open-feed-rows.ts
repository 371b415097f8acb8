import { QUIET_DRIVER } from '@libs/ledger/typeorm';
import { DataSource } from 'typeorm';
import type { FeedRows } from '../subscription';
import { feedTables } from './feed-tables';
import { FEED_MIGRATIONS, FEED_MIGRATIONS_TABLE } from './migrations';

/** A file of its own beside the ledger's, or tables beside the ledger's in the same PostgreSQL database. */
export type FeedPlace = { readonly sqlite: string } | { readonly postgres: string };

const sourceOf = (place: FeedPlace): DataSource => {
  const migrated = {
    migrations: FEED_MIGRATIONS,
    migrationsTableName: FEED_MIGRATIONS_TABLE,
    migrationsRun: true,
  };
  return 'sqlite' in place
    ? new DataSource({
        type: 'sqlite',
        database: place.sqlite,
        enableWAL: true,
        busyTimeout: 5_000,
        driver: QUIET_DRIVER,
        ...migrated,
      })
    : new DataSource({ type: 'postgres', url: place.postgres, poolSize: 2, ...migrated });
};

export const openFeedRows = async (place: FeedPlace): Promise<FeedRows> =>
  feedTables(await sourceOf(place).initialize());
