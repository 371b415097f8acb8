import { hash } from 'node:crypto';
import { HASH_BYTES } from '@libs/proof';
import { HASHING } from '../tree/tree-hashing';

/**
 * The tree of `growingTree`, for a million leaves at a time: its edge lies in one block of bytes, and hashes come as
 * text of one byte a letter, which costs a third of making a buffer for each.
 */
export type EdgeTree = {
  readonly add: (leaf: Buffer, start: number) => void;
  readonly size: () => number;
  readonly root: () => Uint8Array;
};

const NODE_PREFIX = 1;
const PAIR_BYTES = 1 + 2 * HASH_BYTES;
/** Full subtrees of 2^53 leaves are at most this many, and one more while it grows. */
const EDGE = 54;

export const edgeTree = (whenFull: (height: number, index: number, hash: Buffer) => void): EdgeTree => {
  const block = Buffer.alloc(PAIR_BYTES + EDGE * HASH_BYTES);
  const pair = block.subarray(0, PAIR_BYTES);
  pair[0] = NODE_PREFIX;
  const slot = (n: number): number => PAIR_BYTES + n * HASH_BYTES;
  let size = 0;
  let top = 0;

  return {
    add: (leaf, start) => {
      leaf.copy(block, slot(top), start, start + HASH_BYTES);
      let height = 0;
      for (let count = size; count % 2 === 1; count = (count - 1) / 2) {
        top -= 1;
        // Left and right lie side by side on the edge.
        block.copyWithin(1, slot(top), slot(top + 2));
        block.write(hash('sha256', pair, 'binary'), slot(top), 'latin1');
        height += 1;
        if (height % 8 === 0) whenFull(height, (count - 1) / 2, block.subarray(slot(top), slot(top + 1)));
      }
      top += 1;
      size += 1;
    },
    size: () => size,
    root: () => {
      let root: Uint8Array | undefined;
      for (let n = top - 1; n >= 0; n -= 1) {
        const left = block.subarray(slot(n), slot(n + 1));
        root = root === undefined ? Buffer.from(left) : HASHING.node(left, root);
      }
      return root ?? HASHING.empty;
    },
  };
};
