import type { TreeHashing } from './hashing';

/** The hash of the full subtree of 2^height leaves that begins at leaf `index * 2^height`. */
export type NodeSource = (height: number, index: number) => Uint8Array;

type Tree = { readonly hashing: Pick<TreeHashing, 'node' | 'empty'>; readonly nodes: NodeSource };

/** Root of the first `size` leaves (RFC 9162, section 2.1.1). */
export const rootAt = (tree: Tree, size: number): Uint8Array =>
  size === 0 ? tree.hashing.empty : rangeHash(tree, 0, size);

/** PATH of RFC 9162, section 2.1.3.1: the hashes that lead from leaf `index` up to the root of `size` leaves. */
export const inclusionPath = (tree: Tree, index: number, size: number): readonly Uint8Array[] => {
  const path: Uint8Array[] = [];
  let [from, to] = [0, size];
  while (to - from > 1) {
    const middle = from + powerBelow(to - from);
    if (index < middle) {
      path.push(rangeHash(tree, middle, to));
      to = middle;
    } else {
      path.push(rangeHash(tree, from, middle));
      from = middle;
    }
  }
  return path.reverse();
};

/** PROOF of RFC 9162, section 2.1.4.1: that the tree of `first` leaves is the beginning of that of `second`. */
export const consistencyPath = (tree: Tree, first: number, second: number): readonly Uint8Array[] => {
  const path: Uint8Array[] = [];
  let [from, to] = [0, second];
  while (first < to) {
    const middle = from + powerBelow(to - from);
    if (first <= middle) {
      path.push(rangeHash(tree, middle, to));
      to = middle;
    } else {
      path.push(rangeHash(tree, from, middle));
      from = middle;
    }
  }
  // The verifier has the first root itself, unless that subtree lies inside.
  if (from > 0) path.push(rangeHash(tree, from, to));
  return path.reverse();
};

/** Hash over leaves `from` up to, not including, `to`. RFC 9162 cuts so that `from` fits a full subtree. */
const rangeHash = (tree: Tree, from: number, to: number): Uint8Array => {
  const size = to - from;
  const half = powerBelow(size);
  if (size === 1) return tree.nodes(0, from);
  if (half * 2 === size) return tree.nodes(heightOf(size), from / size);
  return tree.hashing.node(rangeHash(tree, from, from + half), rangeHash(tree, from + half, to));
};

/** The largest power of two below `size`. By doubling, since bit operations stop at 2^31. */
const powerBelow = (size: number): number => {
  let power = 1;
  while (power * 2 < size) power *= 2;
  return power;
};

const heightOf = (power: number): number => {
  let height = 0;
  for (let size = 1; size < power; size *= 2) height += 1;
  return height;
};

/** A tree held in memory: for stream heads, and wherever leaves are few. */
export const treeOver = (hashing: TreeHashing, leaves: readonly Uint8Array[]): Tree => {
  const levels: (readonly Uint8Array[])[] = [leaves];
  for (let below = leaves; below.length > 1;) {
    const level: Uint8Array[] = [];
    for (let n = 0; n + 1 < below.length; n += 2) level.push(hashing.node(at(below, n), at(below, n + 1)));
    levels.push(level);
    below = level;
  }
  return { hashing, nodes: (height, index) => at(levels[height] ?? [], index) };
};

/** Only nodes of the tree's own size are ever asked for. */
const at = (hashes: readonly Uint8Array[], index: number): Uint8Array => hashes[index] ?? new Uint8Array();
