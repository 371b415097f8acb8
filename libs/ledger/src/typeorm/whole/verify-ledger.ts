import { open, proven } from '@libs/proof';
import type { Outcome, VerifierKey } from '@libs/proof';
import type { Sql } from '../../port';
import { checkpointCheck, checkpointRows, keptCheckpoints } from './checkpoint-check';
import { checkEvents } from './event-check';
import { edgeTree } from './edge-tree';
import { findings } from './findings';
import type { Findings } from './findings';
import { leafStore } from './leaf-store';
import { checkTiles, tilesGiven } from './tile-check';

export type WholeLedger = {
  readonly sql: Sql;
  /** Keys the plant signs and has signed with. */
  readonly keys: readonly VerifierKey[];
  readonly progress?: (position: number, head: number) => void;
};

/** Derives the whole ledger anew from its rows, and says what differs from what was recorded and signed. */
export const verifyLedger = async ({ sql, keys, progress }: WholeLedger): Promise<readonly Outcome[]> => {
  const wrong = findings();
  const leaves = leafStore();
  const tiles = tilesGiven(leaves);
  const tree = edgeTree(tiles.full);
  // Before the head is read: no checkpoint is of more events than that, whatever is recorded meanwhile.
  const rows = await checkpointRows(sql);
  const { ledger, head } = await identityOf(sql);
  const kept = keptCheckpoints(rows, ledger, keys);
  const checkpoints = checkpointCheck(kept, leaves, wrong);

  const streams = await checkEvents(
    sql,
    { ledger, head, wrong },
    {
      hashes: (position, hashes) => leaves.put(position, hashes),
      passed: (position, so) => {
        // A hole keeps its place, so that what comes after it can still be compared.
        while (tree.size() < position) tree.add(leaves.at(tree.size() + 1), 0);
        if (checkpoints.isAt(position)) checkpoints.at(position, tree.root(), so);
      },
      progress: (position) => progress?.(position, head),
    },
  );
  await addedRows(sql, wrong);
  checkpoints.beyond(head);
  const tileCount = await checkTiles(sql, { given: tiles, head }, wrong);
  const said = wrong.all();
  if (said.length > 0) return said;
  return [
    proven('ledger-gapless', { events: head, streams: streams.size }),
    proven('tiles-agree', { tiles: tileCount }),
    ...signedOutcomes(kept.length, kept.at(-1)?.size ?? 0, head),
  ];
};

/** One look at both, so that a commit in between is not taken for an addition. */
const addedRows = async (sql: Sql, wrong: Findings): Promise<void> => {
  const rows = await sql.query<{ position: number; version: number; stream: string }>(
    `SELECT position, version, stream FROM event
     WHERE position > (SELECT head FROM writer) OR position < 1 ORDER BY position LIMIT 1000`,
  );
  for (const row of rows) wrong.add('row-added', row);
};

const signedOutcomes = (checkpoints: number, size: number, head: number): readonly Outcome[] =>
  checkpoints === 0
    ? [open('checkpoint-none')]
    : [
        proven('checkpoints-agree', { checkpoints, size }),
        ...(size < head ? [open('beyond-checkpoint', { size })] : []),
        open('checkpoint-kept-elsewhere'),
      ];

const identityOf = async (sql: Sql): Promise<{ readonly ledger: string; readonly head: number }> => {
  const [row] = await sql.query<{ id: string; head: number }>(
    'SELECT ledger.id AS id, writer.head AS head FROM ledger JOIN writer ON writer.plant = ledger.id',
  );
  if (row === undefined)
    throw new Error('There is no ledger in this database yet, or its writer row was taken out');
  return { ledger: row.id, head: row.head };
};
