import { HASH_BYTES, TILE_HEIGHT, TILE_WIDTH, hexOf, joined, sameBytes, tileRoot } from '@libs/proof';
import type { Sql } from '../../port';
import { HASHING } from '../tree/tree-hashing';
import type { Findings } from './findings';
import type { LeafStore } from './leaf-store';

type TileRow = {
  readonly level: number;
  readonly number: number;
  readonly root: Uint8Array;
  readonly hashes: Uint8Array;
};

/** What the events give for a tile: the hashes in it, and the hash over it. */
type Given = { readonly hashes: Uint8Array; readonly root: Uint8Array };

/** What the tiles must be, gathered while the events go by. */
export type TilesGiven = {
  readonly full: (height: number, index: number, hash: Uint8Array) => void;
  readonly at: (level: number, number: number) => Given | undefined;
};

export const tilesGiven = (leaves: LeafStore): TilesGiven => {
  /** Of each level the hashes over its tiles: what the tiles above are made of. */
  const roots: Uint8Array[][] = [];
  return {
    full: (height, index, hash) => {
      const level = height / TILE_HEIGHT - 1;
      (roots[level] ??= [])[index] = Uint8Array.from(hash);
    },
    at: (level, number) => {
      const root = roots[level]?.[number];
      if (root === undefined) return undefined;
      const first = number * TILE_WIDTH;
      const hashes =
        level === 0
          ? leaves.tile(number)
          : joined(...(roots[level - 1] ?? []).slice(first, first + TILE_WIDTH));
      return { root, hashes };
    },
  };
};

const PAGE = 256;

/** Every tile that is kept, against what the events give. Returns how many there are. */
export const checkTiles = async (
  sql: Sql,
  { given, head }: { readonly given: TilesGiven; readonly head: number },
  wrong: Findings,
): Promise<number> => {
  let count = 0;
  for (let last = { level: -1, number: 0 }; ;) {
    const rows = await sql.query<TileRow>(
      `SELECT level, number, root, hashes FROM tile WHERE (level, number) > ($1, $2)
       ORDER BY level, number LIMIT ${PAGE}`,
      [last.level, last.number],
    );
    // What was kept meanwhile is of events that were not read.
    for (const row of rows) if (rangeOf(row.level, row.number).to <= head) checkTile(row, given, wrong);
    count += rows.length;
    last = rows.at(-1) ?? last;
    if (rows.length < PAGE) return count;
  }
};

const checkTile = (row: TileRow, given: TilesGiven, wrong: Findings): void => {
  const { level, number } = row;
  const expected = given.at(level, number);
  const same = expected !== undefined && sameBytes(row.hashes, expected.hashes);
  if (same && sameBytes(row.root, expected.root)) return;

  const ownRoot = row.hashes.length === TILE_WIDTH * HASH_BYTES ? tileRoot(HASHING, row.hashes) : undefined;
  if (ownRoot === undefined || !sameBytes(ownRoot, row.root))
    wrong.add('tile-altered', {}, { level, number });
  else if (level === 0 && expected !== undefined) differingLeaves(row, expected, wrong);
  else wrong.add('tile-contradicts', {}, { level, number, ...rangeOf(level, number) });
};

/** A tile that is whole in itself says of each event what it was when it was recorded. */
const differingLeaves = ({ number, hashes }: TileRow, expected: Given, wrong: Findings): void => {
  for (let n = 0; n < TILE_WIDTH; n += 1) {
    const was = hexOf(hashes.subarray(n * HASH_BYTES, (n + 1) * HASH_BYTES));
    const is = hexOf(expected.hashes.subarray(n * HASH_BYTES, (n + 1) * HASH_BYTES));
    if (was !== is) wrong.add('row-altered', { position: number * TILE_WIDTH + n + 1 });
  }
};

const rangeOf = (level: number, number: number): { readonly from: number; readonly to: number } => {
  const across = TILE_WIDTH ** (level + 1);
  return { from: number * across + 1, to: (number + 1) * across };
};
