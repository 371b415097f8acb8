import type { Ledger, Sealing, Sql } from '@libs/ledger';
import type { ViewReader } from '@libs/views';
import type { NameBook } from './names';
import type { PhotoStore } from './photos';
import type { Plans } from './plans';
import type { Proving } from './proof';
import type { Roster } from './roster';
import type { Families } from './families';

/** What a plant is put together from. */
export type PlantParts = {
  readonly ledger: Ledger;
  /** Read-only SQL: sees all that is committed. */
  readonly reader: Sql;
  readonly views: ViewReader;
  readonly sealing: Sealing;
  readonly proving: Proving;
  readonly photos: PhotoStore;
  /** Milliseconds since 1970, UTC. */
  readonly clock: () => number;
  /** Every view from the ledger anew. */
  readonly rebuild: (progress: (position: number, head: number) => void) => Promise<void>;
};

/** What every telling works with. */
export type Workings = PlantParts & {
  readonly plans: Plans;
  readonly names: NameBook;
  readonly roster: Roster;
  readonly families: Families;
};
