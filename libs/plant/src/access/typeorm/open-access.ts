import { QUIET_DRIVER } from '@libs/ledger/typeorm';
import { DataSource } from 'typeorm';
import type { Access } from '../access';
import { accessOver } from '../access-over';
import type { AccessRows } from '../access-rows';
import type { Vault } from '../factors/vault';
import type { GuessCost } from '../secret';
import { accessTables } from './access-tables';
import { ACCESS_MIGRATIONS, ACCESS_MIGRATIONS_TABLE } from './migrations';

/** A file of its own beside the ledger's, or tables beside the ledger's in the same PostgreSQL database. */
export type AccessPlace = { readonly sqlite: string } | { readonly postgres: string };

const sourceOf = (place: AccessPlace): DataSource => {
  const migrated = {
    migrations: ACCESS_MIGRATIONS,
    migrationsTableName: ACCESS_MIGRATIONS_TABLE,
    migrationsRun: true,
  };
  return 'sqlite' in place
    ? new DataSource({
        type: 'sqlite',
        database: place.sqlite,
        enableWAL: true,
        busyTimeout: 5_000,
        // One noisy connection would make the ledger's noisy too: it is the driver that is asked, not the connection.
        driver: QUIET_DRIVER,
        ...migrated,
      })
    : new DataSource({ type: 'postgres', url: place.postgres, poolSize: 2, ...migrated });
};

export const openAccessRows = async (place: AccessPlace): Promise<AccessRows> =>
  accessTables(await sourceOf(place).initialize());

/** Opens the sign-ins of a plant, making their tables the first time. The command line and the server share them. */
export const openAccess = async (
  place: AccessPlace,
  now?: () => number,
  cost?: GuessCost,
  vault?: Vault,
): Promise<Access> => accessOver(await openAccessRows(place), now, cost, vault);
