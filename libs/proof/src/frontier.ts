import type { TreeHashing } from './hashing';

/** A tree that grows leaf by leaf and remembers no more than its right edge. */
export type GrowingTree = {
  readonly add: (leaf: Uint8Array) => void;
  readonly size: () => number;
  readonly root: () => Uint8Array;
};

export const growingTree = (
  { node, empty }: Pick<TreeHashing, 'node' | 'empty'>,
  /** Told of every subtree that is full, as soon as it is: its height, its place and the hash over it. */
  whenFull: (height: number, index: number, hash: Uint8Array) => void = () => undefined,
): GrowingTree => {
  /** Full subtrees, the largest first; their sizes are the powers of two in `size`. */
  const edge: Uint8Array[] = [];
  let size = 0;
  return {
    add: (leaf) => {
      let grown = leaf;
      // Below, an odd count means that a full subtree of the same height waits on the left.
      let height = 0;
      for (let count = size; count % 2 === 1; count = (count - 1) / 2) {
        grown = node(edge.pop() ?? empty, grown);
        height += 1;
        whenFull(height, (count - 1) / 2, grown);
      }
      edge.push(grown);
      size += 1;
    },
    size: () => size,
    root: () => (edge.length === 0 ? empty : edge.reduceRight((right, left) => node(left, right))),
  };
};
