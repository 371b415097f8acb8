/** SHA-256, injected: a server has its own, a browser takes one that does not wait. */
export type Sha256 = (bytes: Uint8Array) => Uint8Array;

/** The three hashes of an RFC 9162 tree (section 2.1.1). Leaves and nodes differ in their first byte. */
export type TreeHashing = {
  readonly sha256: Sha256;
  readonly empty: Uint8Array;
  readonly leaf: (bytes: Uint8Array) => Uint8Array;
  readonly node: (left: Uint8Array, right: Uint8Array) => Uint8Array;
};

export const HASH_BYTES = 32;
const LEAF_PREFIX = 0;
const NODE_PREFIX = 1;

export const treeHashing = (sha256: Sha256): TreeHashing => {
  // One buffer for all nodes: nothing waits in between, and nodes are hashed by the million.
  const pair = new Uint8Array(1 + 2 * HASH_BYTES);
  pair[0] = NODE_PREFIX;
  return {
    sha256,
    empty: sha256(new Uint8Array()),
    leaf: (bytes) => {
      const prefixed = new Uint8Array(bytes.length + 1);
      prefixed[0] = LEAF_PREFIX;
      prefixed.set(bytes, 1);
      return sha256(prefixed);
    },
    node: (left, right) => {
      pair.set(left, 1);
      pair.set(right, 1 + HASH_BYTES);
      return sha256(pair);
    },
  };
};
