import { HASH_BYTES, TILE_BYTES, TILE_WIDTH } from '@libs/proof';

/** Hashes of all events, made anew, by position: 32 bytes each, in blocks that grow with the ledger. */
export type LeafStore = {
  /** Hashes side by side, the first at this position. */
  readonly put: (position: number, hashes: Buffer) => void;
  readonly at: (position: number) => Buffer;
  /** The 256 hashes of a full tile. */
  readonly tile: (number: number) => Buffer;
};

const BLOCK = 64 * TILE_WIDTH;

export const leafStore = (): LeafStore => {
  const blocks: Buffer[] = [];
  const blockOf = (index: number): Buffer => (blocks[index] ??= Buffer.alloc(BLOCK * HASH_BYTES));

  return {
    put: (position, hashes) => {
      for (let from = 0; from < hashes.length;) {
        const leaf = position - 1 + from / HASH_BYTES;
        const start = (leaf % BLOCK) * HASH_BYTES;
        from += hashes.copy(blockOf(Math.floor(leaf / BLOCK)), start, from);
      }
    },
    at: (position) => {
      const start = ((position - 1) % BLOCK) * HASH_BYTES;
      return blockOf(Math.floor((position - 1) / BLOCK)).subarray(start, start + HASH_BYTES);
    },
    tile: (number) => {
      const start = (number * TILE_BYTES) % (BLOCK * HASH_BYTES);
      return blockOf(Math.floor((number * TILE_WIDTH) / BLOCK)).subarray(start, start + TILE_BYTES);
    },
  };
};
