import type { TreeHashing } from './hashing';

/** A tree that grows leaf by leaf and remembers no more than its right edge. */
export type GrowingTree = {
  readonly add: (leaf: Uint8Array) => void;
  readonly size: () => number;
  readonly root: () => Uint8Array;
};

export const growingTree = ({ node, empty }: TreeHashing): GrowingTree => {
  /** Full subtrees, the largest first; their sizes are the powers of two in `size`. */
  const edge: Uint8Array[] = [];
  let size = 0;
  return {
    add: (leaf) => {
      let grown = leaf;
      // Below, an odd count means that a full subtree of the same height waits on the left.
      for (let count = size; count % 2 === 1; count = (count - 1) / 2)
        grown = node(edge.pop() ?? empty, grown);
      edge.push(grown);
      size += 1;
    },
    size: () => size,
    root: () => (edge.length === 0 ? empty : edge.reduceRight((right, left) => node(left, right))),
  };
};
