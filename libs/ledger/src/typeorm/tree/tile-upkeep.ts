import { TILE_WIDTH } from '@libs/proof';
import type { Observable } from 'rxjs';
import { LedgerClosed, WriterSuperseded } from '../../fault';
import type { Sql } from '../../port';
import { keepTiles, tilesDue } from './tile-rows';
import type { FullTile } from './tile-rows';

/**
 * Tiles kept by one transaction. One a tile would wait for the disk once more for every 256 events; what is not kept
 * yet is put together from its events when asked for, which for so few takes some milliseconds.
 */
const TILES_AT_ONCE = 16;

type Upkeep = {
  readonly reader: Sql;
  readonly news: Observable<number>;
  readonly transaction: <T>(work: (sql: Sql) => Promise<T>) => Promise<T>;
};

export type TileUpkeep = {
  /** Nothing is under way any more. Throws what the last upkeep failed with, unless another writer took over. */
  readonly stop: () => Promise<void>;
};

/** Follows the log by position. Hashes are worked out beside the writer; it is only asked to put them down. */
export const keepTilesUp = ({ reader, news, transaction }: Upkeep, head: number): TileUpkeep => {
  let kept = 0;
  let latest = head;
  let under: Promise<void> | undefined;
  let failure: unknown;
  let stopped = false;

  const isDue = (): boolean => !stopped && latest - kept >= TILES_AT_ONCE * TILE_WIDTH;
  const run = async (): Promise<void> => {
    while (isDue()) {
      const size = latest;
      const tiles = await dueOnAllLevels(reader, size);
      if (tiles.length > 0) await transaction((sql) => keepTiles(sql, tiles));
      const last = tiles.findLast(({ level }) => level === 0);
      kept = (last === undefined ? Math.floor(size / TILE_WIDTH) : last.index + 1) * TILE_WIDTH;
    }
  };
  const start = (): void => {
    if (under !== undefined || !isDue()) return;
    under = run()
      .then(
        () => (failure = undefined),
        (error: unknown) => (failure = error),
      )
      .then(() => {
        under = undefined;
      });
  };
  const hearing = news.subscribe((position) => {
    latest = position;
    start();
  });
  start();
  return {
    stop: async () => {
      stopped = true;
      hearing.unsubscribe();
      await under;
      if (failure === undefined || isTakenOver(failure)) return;
      throw new Error("The ledger's tiles could not be kept up; the log itself is whole", { cause: failure });
    },
  };
};

const isTakenOver = (error: unknown): boolean =>
  error instanceof WriterSuperseded || error instanceof LedgerClosed;

/** The lowest level first: a tile above needs the roots of those below. */
const dueOnAllLevels = async (reader: Sql, size: number): Promise<readonly FullTile[]> => {
  const tiles: FullTile[] = [];
  for (let level = 0; TILE_WIDTH ** (level + 1) <= size; level += 1)
    tiles.push(...(await tilesDue(reader, level, size, TILES_AT_ONCE)));
  return tiles;
};
