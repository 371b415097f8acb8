import { sameBytes } from './bytes';
import { HASH_BYTES } from './hashing';
import type { TreeHashing } from './hashing';

type Count = number | bigint;

export type Inclusion = {
  readonly index: Count;
  readonly size: Count;
  readonly leaf: Uint8Array;
  readonly path: readonly Uint8Array[];
};

/** The root this path leads to (RFC 9162, section 2.1.3.2); undefined where it fits no tree of that size. */
export const rootFromInclusion = (
  { node }: Pick<TreeHashing, 'node'>,
  { index, size, leaf, path }: Inclusion,
): Uint8Array | undefined => {
  let [fn, sn] = [BigInt(index), BigInt(size) - 1n];
  if (fn < 0n || fn > sn || !areHashes([leaf, ...path])) return undefined;

  let root = leaf;
  for (const other of path) {
    if (sn === 0n) return undefined;
    const fromRight = isOdd(fn) || fn === sn;
    root = fromRight ? node(other, root) : node(root, other);
    [fn, sn] = fromRight ? pastRightEdge(fn, sn) : [fn, sn];
    [fn, sn] = [fn >> 1n, sn >> 1n];
  }
  return sn === 0n ? root : undefined;
};

export const includes = (
  hashing: Pick<TreeHashing, 'node'>,
  inclusion: Inclusion,
  root: Uint8Array,
): boolean => {
  const found = rootFromInclusion(hashing, inclusion);
  return found !== undefined && sameBytes(found, root);
};

export type Consistency = {
  readonly first: { readonly size: Count; readonly root: Uint8Array };
  readonly second: { readonly size: Count; readonly root: Uint8Array };
  readonly path: readonly Uint8Array[];
};

/** Whether the second tree begins with the first one (RFC 9162, section 2.1.4.2). Of an empty first nothing is proven. */
export const extendsTree = (
  { node }: Pick<TreeHashing, 'node'>,
  { first, second, path }: Consistency,
): boolean => {
  const [m, n] = [BigInt(first.size), BigInt(second.size)];
  if (m <= 0n || m > n) return false;
  if (m === n) return path.length === 0 && sameBytes(first.root, second.root);
  if (!areHashes([first.root, second.root, ...path])) return false;

  const [start, ...rest] = isPowerOfTwo(m) ? [first.root, ...path] : path;
  const roots = start === undefined ? undefined : rootsFrom({ node }, start, rest, [m - 1n, n - 1n]);
  return roots !== undefined && sameBytes(roots.older, first.root) && sameBytes(roots.newer, second.root);
};

type BothRoots = { readonly older: Uint8Array; readonly newer: Uint8Array };

const rootsFrom = (
  { node }: Pick<TreeHashing, 'node'>,
  start: Uint8Array,
  path: readonly Uint8Array[],
  [first, second]: readonly [bigint, bigint],
): BothRoots | undefined => {
  let [fn, sn] = [first, second];
  while (isOdd(fn)) [fn, sn] = [fn >> 1n, sn >> 1n];

  let [older, newer] = [start, start];
  for (const other of path) {
    if (sn === 0n) return undefined;
    if (isOdd(fn) || fn === sn) {
      [older, newer] = [node(other, older), node(other, newer)];
      [fn, sn] = pastRightEdge(fn, sn);
    } else {
      newer = node(newer, other);
    }
    [fn, sn] = [fn >> 1n, sn >> 1n];
  }
  return sn === 0n ? { older, newer } : undefined;
};

/** Up to where the node is a right child: levels that have no sibling are skipped. */
const pastRightEdge = (fn: bigint, sn: bigint): [bigint, bigint] => {
  let [f, s] = [fn, sn];
  while (!isOdd(f) && f !== 0n) [f, s] = [f >> 1n, s >> 1n];
  return [f, s];
};

const isOdd = (count: bigint): boolean => (count & 1n) === 1n;
const isPowerOfTwo = (count: bigint): boolean => (count & (count - 1n)) === 0n;
const areHashes = (hashes: readonly Uint8Array[]): boolean =>
  hashes.every(({ length }) => length === HASH_BYTES);
