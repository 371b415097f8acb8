import { HASH_BYTES, TILE_WIDTH, joined, tileRoot } from '@libs/proof';
import type { TileId } from '@libs/proof';
import type { Sql } from '../../port';
import { HASHING } from './tree-hashing';

type LeafRow = { readonly leaf: Uint8Array };
type RootRow = { readonly number: number; readonly root: Uint8Array };
type TileRow = { readonly hashes: Uint8Array };

export class TreeIncomplete extends Error {
  constructor(level: number, index: number, found: number, expected: number) {
    super(
      `Tile ${level}/${index} of the ledger's tree has ${found} hashes where there must be ${expected}: ` +
        'events are missing. Run `studbook verify --ledger` to see which.',
    );
    this.name = 'TreeIncomplete';
  }
}

/** Entries of a tile when the ledger has `size` events: 256 of a full one, fewer at the edge. */
const entriesOf = ({ level, index }: TileId, size: number): number =>
  Math.max(0, Math.min(TILE_WIDTH, Math.floor(size / TILE_WIDTH ** level) - index * TILE_WIDTH));

/** A tile as stored; one not stored, at the edge or not kept up yet, is put together from what lies below it. */
export const tileAt = async (sql: Sql, id: TileId, size: number): Promise<Uint8Array> => {
  const entries = entriesOf(id, size);
  if (entries === TILE_WIDTH) {
    const [row] = await sql.query<TileRow>('SELECT hashes FROM tile WHERE level = $1 AND number = $2', [
      id.level,
      id.index,
    ]);
    if (row !== undefined) return row.hashes;
  }
  return id.level === 0 ? leavesOf(sql, id, entries) : rootsBelow(sql, id, { entries, size });
};

const leavesOf = async (sql: Sql, { level, index }: TileId, entries: number): Promise<Uint8Array> => {
  const first = index * TILE_WIDTH;
  const rows = await sql.query<LeafRow>(
    'SELECT leaf FROM event WHERE position > $1 AND position <= $2 ORDER BY position',
    [first, first + entries],
  );
  if (rows.length < entries) throw new TreeIncomplete(level, index, rows.length, entries);
  return joined(...rows.map(({ leaf }) => leaf));
};

const rootsBelow = async (
  sql: Sql,
  { level, index }: TileId,
  { entries, size }: { readonly entries: number; readonly size: number },
): Promise<Uint8Array> => {
  const first = index * TILE_WIDTH;
  const rows = await sql.query<RootRow>(
    'SELECT number, root FROM tile WHERE level = $1 AND number >= $2 AND number < $3',
    [level - 1, first, first + entries],
  );
  const roots = new Map(rows.map(({ number, root }) => [number, root]));
  const hashes = new Uint8Array(entries * HASH_BYTES);
  for (let n = 0; n < entries; n += 1) {
    const below = { level: level - 1, index: first + n };
    hashes.set(roots.get(below.index) ?? tileRoot(HASHING, await tileAt(sql, below, size)), n * HASH_BYTES);
  }
  return hashes;
};

/** A full tile to be kept. */
export type FullTile = TileId & { readonly root: Uint8Array; readonly hashes: Uint8Array };

/** Full tiles of one level that are not kept yet, the first `limit` of them. */
export const tilesDue = async (
  sql: Sql,
  level: number,
  size: number,
  limit: number,
): Promise<readonly FullTile[]> => {
  const [row] = await sql.query<{ next: number | null }>(
    'SELECT max(number) + 1 AS next FROM tile WHERE level = $1',
    [level],
  );
  const from = row?.next ?? 0;
  const to = Math.min(from + limit, Math.floor(size / TILE_WIDTH ** (level + 1)));
  const tiles: FullTile[] = [];
  for (let index = from; index < to; index += 1) {
    const hashes = await tileAt(sql, { level, index }, size);
    tiles.push({ level, index, hashes, root: tileRoot(HASHING, hashes) });
  }
  return tiles;
};

/** Another process may have kept it meanwhile: then it is the same. */
export const keepTiles = async (sql: Sql, tiles: readonly FullTile[]): Promise<void> => {
  for (const { level, index, root, hashes } of tiles) {
    await sql.query(
      'INSERT INTO tile (level, number, root, hashes) VALUES ($1, $2, $3, $4) ON CONFLICT DO NOTHING',
      [level, index, root, hashes],
    );
  }
};
