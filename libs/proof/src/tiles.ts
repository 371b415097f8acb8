import { HASH_BYTES } from './hashing';
import type { TreeHashing } from './hashing';
import type { NodeSource } from './tree';

/** A tile holds 2^8 hashes side by side, and the hash over them stands in the tile above (C2SP tlog-tiles). */
export const TILE_HEIGHT = 8;
export const TILE_WIDTH = 256;
export const TILE_BYTES = TILE_WIDTH * HASH_BYTES;

export type TileId = { readonly level: number; readonly index: number };

/** Hash over a full tile. */
export const tileRoot = (hashing: TreeHashing, hashes: Uint8Array): Uint8Array =>
  nodeWithin({ hashing, hashes, known: new Map() }, TILE_HEIGHT, 0);

/** Every node of a tree whose tiles are at hand, the partial ones at its edge included. */
export const nodesFromTiles = (hashing: TreeHashing, tile: (id: TileId) => Uint8Array): NodeSource => {
  const opened = new Map<string, Tile>();
  const open = (id: TileId): Tile => {
    const name = `${id.level}/${id.index}`;
    const known = opened.get(name);
    if (known !== undefined) return known;
    const tileThere = { hashing, hashes: tile(id), known: new Map() };
    opened.set(name, tileThere);
    return tileThere;
  };
  return (height, index) => {
    const { id, within, place } = placeOf(height, index);
    return nodeWithin(open(id), within, place);
  };
};

/** Which tiles some work on the tree looks at: it is run once for that alone, on hashes that mean nothing. */
export const tilesFor = (work: (nodes: NodeSource) => void): readonly TileId[] => {
  const needed = new Map<string, TileId>();
  work((height, index) => {
    const { id } = placeOf(height, index);
    needed.set(`${id.level}/${id.index}`, id);
    return NOTHING;
  });
  return [...needed.values()];
};

const NOTHING = new Uint8Array(HASH_BYTES);

type Tile = {
  readonly hashing: TreeHashing;
  readonly hashes: Uint8Array;
  /** Nodes worked out before, by height and place: paths of neighbours share most of them. */
  readonly known: Map<number, Uint8Array>;
};

const placeOf = (height: number, index: number): { id: TileId; within: number; place: number } => {
  const within = height % TILE_HEIGHT;
  const across = TILE_WIDTH / 2 ** within;
  const id = { level: (height - within) / TILE_HEIGHT, index: Math.floor(index / across) };
  return { id, within, place: index % across };
};

const nodeWithin = (tile: Tile, height: number, place: number): Uint8Array => {
  if (height === 0) return tile.hashes.subarray(place * HASH_BYTES, (place + 1) * HASH_BYTES);
  const name = height * TILE_WIDTH + place;
  const known = tile.known.get(name);
  if (known !== undefined) return known;
  const left = nodeWithin(tile, height - 1, place * 2);
  const hash = tile.hashing.node(left, nodeWithin(tile, height - 1, place * 2 + 1));
  tile.known.set(name, hash);
  return hash;
};
