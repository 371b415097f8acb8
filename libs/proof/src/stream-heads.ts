import { canonicalJson } from '@libs/kernel';
import { byBytes, utf8 } from './bytes';
import type { TreeHashing } from './hashing';
import { inclusionPath, rootAt, treeOver } from './tree';
import { includes } from './tree-proofs';

/**
 * How far a stream goes: its last event. That an event is in the ledger does not show that none is missing; the root
 * over all heads does, since it says where each stream ends.
 */
export type StreamHead = {
  readonly stream: string;
  readonly version: number;
  readonly position: number;
  /** Of its last event, hex. */
  readonly leaf: string;
};

export type HeadProof = {
  readonly head: StreamHead;
  readonly index: number;
  readonly path: readonly Uint8Array[];
};

/** That a stream has no event at all: its neighbours in order of name stand side by side. */
export type AbsenceProof = { readonly before: HeadProof | null; readonly after: HeadProof | null };

export type HeadsRoot = { readonly count: number; readonly root: Uint8Array };

export type HeadsTree = HeadsRoot & {
  /** Undefined where the stream has no event. */
  readonly proofOf: (stream: string) => HeadProof | undefined;
  /** Undefined where it has. */
  readonly absenceOf: (stream: string) => AbsenceProof | undefined;
};

export const headBytes = ({ stream, version, position, leaf }: StreamHead): Uint8Array =>
  utf8(canonicalJson({ leaf, position, stream, version }));

/** Over the heads in the order of their names, byte by byte. */
export const headsTree = (hashing: TreeHashing, heads: readonly StreamHead[]): HeadsTree => {
  const tree = treeOver(
    hashing,
    heads.map((head) => hashing.leaf(headBytes(head))),
  );
  const count = heads.length;
  const proofAt = (index: number): HeadProof | null => {
    const head = heads[index];
    return head === undefined ? null : { head, index, path: inclusionPath(tree, index, count) };
  };
  /** The first head that does not stand before this name. */
  const placeOf = (stream: string): number => {
    let [from, to] = [0, count];
    while (from < to) {
      const middle = Math.floor((from + to) / 2);
      if (byBytes(heads[middle]?.stream ?? '', stream) < 0) from = middle + 1;
      else to = middle;
    }
    return from;
  };
  const isThere = (stream: string): boolean => heads[placeOf(stream)]?.stream === stream;

  return {
    count,
    root: rootAt(tree, count),
    proofOf: (stream) => (isThere(stream) ? (proofAt(placeOf(stream)) ?? undefined) : undefined),
    absenceOf: (stream) =>
      isThere(stream) ? undefined : { before: proofAt(placeOf(stream) - 1), after: proofAt(placeOf(stream)) },
  };
};

export const isHead = (hashing: TreeHashing, { head, index, path }: HeadProof, heads: HeadsRoot): boolean =>
  includes(hashing, { index, size: heads.count, leaf: hashing.leaf(headBytes(head)), path }, heads.root);

export const isAbsent = (
  hashing: TreeHashing,
  stream: string,
  { before, after }: AbsenceProof,
  heads: HeadsRoot,
): boolean => {
  if (before !== null && !(isHead(hashing, before, heads) && byBytes(before.head.stream, stream) < 0))
    return false;
  if (after !== null && !(isHead(hashing, after, heads) && byBytes(stream, after.head.stream) < 0))
    return false;

  const last = before === null ? -1 : before.index;
  const next = after === null ? heads.count : after.index;
  return next === last + 1;
};
