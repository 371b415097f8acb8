import { HASH_BYTES, TILE_HEIGHT, TILE_WIDTH, hexOf, sameBytes, tileRoot } from '@libs/proof';
import type { Sql } from '../../port';
import { HASHING } from '../tree/tree-hashing';
import type { Findings } from './findings';

type TileRow = {
  readonly level: number;
  readonly number: number;
  readonly root: Uint8Array;
  readonly hashes: Uint8Array;
};

/** What the events give for a tile: the hashes in it, and the hash over it. */
type Given = { readonly hashes: Uint8Array; root: Uint8Array };

/** Gathers what the tiles must be while the events go by. 32 bytes an event, as in the database. */
export type TilesGiven = {
  readonly leaf: (leaf: Uint8Array, position: number) => void;
  readonly full: (height: number, index: number, hash: Uint8Array) => void;
  readonly at: (level: number, number: number) => Given | undefined;
};

export const tilesGiven = (): TilesGiven => {
  const given = new Map<string, Given>();
  const put = (level: number, entry: number, hash: Uint8Array): void => {
    const number = Math.floor(entry / TILE_WIDTH);
    const tile = tileIn(given, level, number);
    tile.hashes.set(hash, (entry % TILE_WIDTH) * HASH_BYTES);
  };
  return {
    leaf: (leaf, position) => put(0, position - 1, leaf),
    full: (height, index, hash) => {
      if (height % TILE_HEIGHT !== 0) return;
      const level = height / TILE_HEIGHT;
      tileIn(given, level - 1, index).root = hash;
      put(level, index, hash);
    },
    at: (level, number) => given.get(`${level}/${number}`),
  };
};

const tileIn = (given: Map<string, Given>, level: number, number: number): Given => {
  const name = `${level}/${number}`;
  const known = given.get(name);
  if (known !== undefined) return known;
  const made = { hashes: new Uint8Array(TILE_WIDTH * HASH_BYTES), root: HASHING.empty };
  given.set(name, made);
  return made;
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
