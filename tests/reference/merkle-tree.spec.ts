import {
  consistencyPath,
  extendsTree,
  growingTree,
  hexOf,
  inclusionPath,
  includes,
  rootAt,
  treeOver,
} from '@libs/proof';
import { HASHING, fromHex } from '../support/proof-tools';
import probes from './cases/proof-verification-probes.json';
import vectors from './cases/rfc6962-tree-vectors.json';

const leaves = vectors.leafInputsHex.map((input) => HASHING.leaf(fromHex(input)));
const tree = treeOver(HASHING, leaves);

describe('Merkle tree hashes, RFC 9162 section 2.1 (RFC 6962 test tree of transparency-dev/merkle)', () => {
  it('hashes leaf, node and empty tree as published', () => {
    const { leaf, node, emptyTree, emptyLeaf } = vectors.hashPrimitives;

    expect(hexOf(HASHING.empty)).toBe(emptyTree);
    expect(hexOf(HASHING.leaf(new Uint8Array()))).toBe(emptyLeaf);
    expect(hexOf(HASHING.leaf(Buffer.from(leaf.dataUtf8)))).toBe(leaf.hash);
    expect(leaves.map(hexOf)).toStrictEqual(vectors.leafHashes);
    // The published node is over two short texts, which only an unchecked hash takes.
    expect(hexOf(HASHING.sha256(Buffer.from(`\u0001${node.leftUtf8}${node.rightUtf8}`)))).toBe(node.hash);
  });

  it('has the published root at every size, from the tree and grown leaf by leaf', () => {
    const growing = growingTree(HASHING);
    const grown = [hexOf(growing.root())];
    for (const leaf of leaves) {
      growing.add(leaf);
      grown.push(hexOf(growing.root()));
    }

    expect(vectors.rootsBySize.map((_, size) => hexOf(rootAt(tree, size)))).toStrictEqual(
      vectors.rootsBySize,
    );
    expect(grown).toStrictEqual(vectors.rootsBySize);
  });

  it('makes all 36 inclusion proofs and all 36 consistency proofs', () => {
    for (const { leafIndex, treeSize, proof } of vectors.allInclusionProofs)
      expect(inclusionPath(tree, leafIndex, treeSize).map(hexOf)).toStrictEqual(proof);
    for (const { size1, size2, proof } of vectors.allConsistencyProofs)
      expect(consistencyPath(tree, size1, size2).map(hexOf)).toStrictEqual(proof);
  });
});

describe('proof verification probes of transparency-dev/merkle', () => {
  it.each(probes.inclusion)('inclusion $id is judged right', (probe) => {
    const inclusion = {
      index: BigInt(probe.leafIndex),
      size: BigInt(probe.treeSize),
      leaf: fromHex(probe.leafHash),
      path: probe.proof.map(fromHex),
    };
    expect(includes(HASHING, inclusion, fromHex(probe.root))).toBe(probe.valid);
  });

  it.each(probes.consistency)('consistency $id is judged right', (probe) => {
    const consistency = {
      first: { size: BigInt(probe.size1), root: fromHex(probe.root1) },
      second: { size: BigInt(probe.size2), root: fromHex(probe.root2) },
      path: probe.proof.map(fromHex),
    };
    expect(extendsTree(HASHING, consistency)).toBe(probe.valid);
  });
});
