import fc from 'fast-check';
import {
  consistencyPath,
  extendsTree,
  growingTree,
  headsTree,
  hexOf,
  inclusionPath,
  includes,
  isAbsent,
  isHead,
  nodesFromTiles,
  rootAt,
  tileRoot,
  tilesFor,
  treeOver,
} from '@libs/proof';
import type { TileId } from '@libs/proof';
import { HASHING } from '../support/proof-tools';

/**
 * Goal: no proof of a tree of any size is refused, and none that was changed anywhere is accepted.
 * Method: random sizes and places, and for each proof every way to change it: a bit, a hash less, more or moved, another
 * place, another size. fast-check prints the seed of a failure.
 */
const leaf = (n: number): Uint8Array => HASHING.leaf(Buffer.from(`leaf ${n}`));
const LEAVES = Array.from({ length: 600 }, (_, n) => leaf(n));
const treeOf = (size: number) => treeOver(HASHING, LEAVES.slice(0, size));

const place = fc
  .integer({ min: 1, max: LEAVES.length })
  .chain((size) => fc.record({ size: fc.constant(size), index: fc.integer({ min: 0, max: size - 1 }) }));

const flipped = (bytes: Uint8Array, bit: number): Uint8Array =>
  bytes.map((byte, n) => (n === Math.floor(bit / 8) % bytes.length ? byte ^ (1 << (bit % 8)) : byte));

const changedPath = (path: readonly Uint8Array[], { how, at, bit }: Change): readonly Uint8Array[] => {
  const here = at % Math.max(1, path.length);
  if (how === 'dropped') return path.toSpliced(here, 1);
  if (how === 'added') return path.toSpliced(here, 0, leaf(bit));
  if (how === 'swapped' && path.length > 1) return [...path.slice(here), ...path.slice(0, here)].toReversed();
  return path.map((hash, n) => (n === here ? flipped(hash, bit) : hash));
};
type Change = { readonly how: string; readonly at: number; readonly bit: number };
const change = fc.record({
  how: fc.constantFrom('flipped', 'dropped', 'added', 'swapped'),
  at: fc.nat(20),
  bit: fc.nat(255),
});
const samePath = (a: readonly Uint8Array[], b: readonly Uint8Array[]): boolean =>
  a.map(hexOf).join() === b.map(hexOf).join();

describe('whatever the size of a tree', () => {
  it('every leaf is proven to be in it, and by no other proof, at no other place', () => {
    fc.assert(
      fc.property(place, change, ({ size, index }, how) => {
        const tree = treeOf(size);
        const root = rootAt(tree, size);
        const path = inclusionPath(tree, index, size);
        const inclusion = { index, size, leaf: leaf(index), path };
        expect(includes(HASHING, inclusion, root)).toBe(true);

        const wrong = changedPath(path, how);
        if (!samePath(path, wrong))
          expect(includes(HASHING, { ...inclusion, path: wrong }, root)).toBe(false);
        expect(includes(HASHING, { ...inclusion, leaf: flipped(leaf(index), how.bit) }, root)).toBe(false);
        expect(includes(HASHING, inclusion, flipped(root, how.bit))).toBe(false);
        if (size > 1)
          expect(includes(HASHING, { ...inclusion, index: (index + 1) % size }, root)).toBe(false);
      }),
      { numRuns: 400 },
    );
  });

  it('it is proven to begin with every smaller one, and with nothing else', () => {
    fc.assert(
      fc.property(place, change, ({ size, index }, how) => {
        const tree = treeOf(size);
        const first = { size: index + 1, root: rootAt(tree, index + 1) };
        const second = { size, root: rootAt(tree, size) };
        const path = consistencyPath(tree, index + 1, size);
        expect(extendsTree(HASHING, { first, second, path })).toBe(true);

        const wrong = changedPath(path, how);
        if (!samePath(path, wrong)) expect(extendsTree(HASHING, { first, second, path: wrong })).toBe(false);
        const older = { ...first, root: flipped(first.root, how.bit) };
        const newer = { ...second, root: flipped(second.root, how.bit) };
        expect(extendsTree(HASHING, { first: older, second, path })).toBe(false);
        expect(extendsTree(HASHING, { first, second: newer, path })).toBe(false);
      }),
      { numRuns: 400 },
    );
  });

  it('it grows leaf by leaf, and lies in tiles, to the same root', () => {
    const growing = growingTree(HASHING);
    for (const [n, one] of LEAVES.entries()) {
      growing.add(one);
      expect(hexOf(growing.root())).toBe(hexOf(rootAt(treeOf(n + 1), n + 1)));
    }
    const level0 = (index: number): Uint8Array => Buffer.concat(LEAVES.slice(index * 256, (index + 1) * 256));
    const tile = ({ level, index }: TileId): Uint8Array =>
      level === 0 ? level0(index) : Buffer.concat([0, 1].map((n) => tileRoot(HASHING, level0(n))));
    const nodes = nodesFromTiles(HASHING, tile);
    fc.assert(
      fc.property(place, ({ size, index }) => {
        const path = inclusionPath({ hashing: HASHING, nodes }, index, size);
        expect(samePath(path, inclusionPath(treeOf(size), index, size))).toBe(true);
        const needed = tilesFor((source) => inclusionPath({ hashing: HASHING, nodes: source }, index, size));
        expect(needed.every(({ level }) => level <= 1)).toBe(true);
      }),
    );
  });
});

describe('the heads of streams', () => {
  const heads = ['a', 'b', 'd', 'é', '\u{1f3e0}'].map((stream, n) => ({
    stream,
    version: n + 1,
    position: n + 10,
    leaf: hexOf(leaf(n)),
  }));
  const tree = headsTree(HASHING, heads);

  it('are proven, each with its version, and no other version is', () => {
    for (const { stream } of heads) {
      const proof = tree.proofOf(stream)!;
      expect(isHead(HASHING, proof, tree)).toBe(true);
      const more = { ...proof, head: { ...proof.head, version: proof.head.version + 1 } };
      expect(isHead(HASHING, more, tree)).toBe(false);
    }
  });

  it.each(['', 'aa', 'c', 'z', '\u{1f3e1}'])('show that no stream "%s" is among them', (stream) => {
    const proof = tree.absenceOf(stream)!;

    expect(isAbsent(HASHING, stream, proof, tree)).toBe(true);
    expect(isAbsent(HASHING, 'd', proof, tree)).toBe(false);
    expect(tree.proofOf(stream)).toBeUndefined();
  });
});
