import { QUIET_DRIVER } from '@libs/ledger/typeorm';
import { DataSource } from 'typeorm';
import type { Access } from '../access';
import { accessOver } from '../access';
import type { PinCost } from '../secret';
import { accessTables } from './access-tables';

/** A file of its own beside the ledger's, or tables beside the ledger's in the same PostgreSQL database. */
export type AccessPlace = { readonly sqlite: string } | { readonly postgres: string };

const sourceOf = (place: AccessPlace): DataSource =>
  'sqlite' in place
    ? new DataSource({
        type: 'sqlite',
        database: place.sqlite,
        enableWAL: true,
        busyTimeout: 5_000,
        // One noisy connection would make the ledger's noisy too: it is the driver that is asked, not the connection.
        driver: QUIET_DRIVER,
      })
    : new DataSource({ type: 'postgres', url: place.postgres, poolSize: 2 });

/** Opens the sign-ins of a plant, making their tables the first time. The command line and the server share them. */
export const openAccess = async (place: AccessPlace, now?: () => number, cost?: PinCost): Promise<Access> => {
  const source = await sourceOf(place).initialize();
  return accessOver(await accessTables(source), now, cost);
};
