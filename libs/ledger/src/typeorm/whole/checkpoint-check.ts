import { byBytes, headsTree, originOf, readCheckpoint, readNote, sameBytes, signingBy } from '@libs/proof';
import type { Checkpoint, VerifierKey } from '@libs/proof';
import type { Sql } from '../../port';
import { NOTE_TOOLS } from '../../signing';
import { HASHING } from '../tree/tree-hashing';
import type { LastOf } from './event-check';
import type { Findings } from './findings';
import type { LeafStore } from './leaf-store';

/** A checkpoint in the database; undefined content: not signed by the plant, or not of this size or ledger. */
export type KeptCheckpoint = { readonly size: number; readonly checkpoint: Checkpoint | undefined };

type Row = { readonly size: number; readonly note: string };

export const checkpointRows = (sql: Sql): Promise<readonly Row[]> =>
  sql.query<Row>('SELECT size, note FROM checkpoint ORDER BY size');

export const keptCheckpoints = (
  rows: readonly Row[],
  ledger: string,
  keys: readonly VerifierKey[],
): readonly KeptCheckpoint[] =>
  rows.map(({ size, note }) => {
    const read = readNote(note);
    const checkpoint = read === undefined ? undefined : readCheckpoint(read.text);
    const signed = read !== undefined && keys.some((key) => signingBy(read, key, NOTE_TOOLS) === 'signed');
    const ours = signed && checkpoint?.size === size && checkpoint.origin === originOf(ledger);
    return { size, checkpoint: ours ? checkpoint : undefined };
  });

/** Compares the checkpoints with the tree as it grows past their sizes. */
export const checkpointCheck = (kept: readonly KeptCheckpoint[], leaves: LeafStore, wrong: Findings) => {
  const bySize = new Map(kept.map((one) => [one.size, one.checkpoint]));
  let agreed = 0;
  for (const { size, checkpoint } of kept)
    if (checkpoint === undefined) wrong.add('checkpoint-altered', {}, { size });

  return {
    isAt: (size: number): boolean => bySize.get(size) !== undefined,
    at: (size: number, root: Uint8Array, streams: ReadonlyMap<string, LastOf>): void => {
      const checkpoint = bySize.get(size);
      if (checkpoint === undefined) return;
      const heads = checkpoint.heads === undefined ? undefined : headsTree(HASHING, headsOf(streams, leaves));
      const agrees =
        sameBytes(checkpoint.root, root) &&
        (heads === undefined ||
          (checkpoint.heads?.count === heads.count && sameBytes(checkpoint.heads.root, heads.root)));
      if (agrees) agreed = size;
      else wrong.add('checkpoint-contradicted', {}, { size, after: agreed });
    },
    beyond: (head: number): void => {
      for (const { size } of kept) if (size > head) wrong.add('checkpoint-beyond', {}, { size, head });
    },
  };
};

const headsOf = (streams: ReadonlyMap<string, LastOf>, leaves: LeafStore) =>
  [...streams]
    .sort(([a], [b]) => byBytes(a, b))
    .map(([stream, { version, position }]) => ({
      stream,
      version,
      position,
      leaf: leaves.at(position).toString('hex'),
    }));
