import { hash } from 'node:crypto';
import { checkpointText, originOf, signedNote } from '@libs/proof';
import { openLedger, readLedger, verifyLedger } from '@libs/ledger/typeorm';
import { signerFrom } from '../../support/proof-tools';
import { perSecond } from '../bench';
import type { Contest, Row } from '../bench';
import { SECRET, START, record } from '../recorded-log';
import { scratch } from '../scratch';

/** Leaf and node hashes of the same bytes, lying ready in memory behind their prefix, in one loop; nothing else. */
const bareHashing = (prefixed: readonly Buffer[]): Promise<number> =>
  perSecond(prefixed.length, () => {
    const edge: Buffer[] = [];
    const pair = Buffer.alloc(65, 1);
    for (const [n, bytes] of prefixed.entries()) {
      let grown = hash('sha256', bytes, 'buffer');
      for (let count = n; count % 2 === 1; count = (count - 1) / 2) {
        edge.pop()?.copy(pair, 1);
        grown.copy(pair, 33);
        grown = hash('sha256', pair, 'buffer');
      }
      edge.push(grown);
    }
    return Promise.resolve();
  });

const SIGNER = signerFrom('bench', Buffer.alloc(32, 3));

const prepare = async (size: number): Promise<Contest> => {
  const files = scratch();
  const file = files.file();
  await record(file, size);
  const writing = await openLedger({
    at: { file },
    name: 'Bench',
    clock: () => START,
    secret: SECRET,
    keepers: [],
  });
  const head = await writing.head();
  const [root, heads] = [await writing.tree.rootAt(head), await writing.tree.headsAt(head)];
  const text = checkpointText({ origin: originOf(writing.id), size: head, root, heads });
  await writing.checkpoints.keep(head, signedNote(text, [SIGNER]));
  await writing.close();

  const ledger = await readLedger({ file });
  const rows = await ledger.reader.query<{ body: string }>('SELECT body FROM event ORDER BY position');
  const prefixed = rows.map(({ body }) => Buffer.from(`\u0000${body}`));
  return {
    ours: () =>
      perSecond(head, async () => {
        const outcomes = await verifyLedger({ sql: ledger.reader, keys: [SIGNER.key] });
        if (outcomes.some(({ is }) => is === 'failed')) throw new Error(JSON.stringify(outcomes));
      }),
    peer: () => bareHashing(prefixed),
    close: async () => {
      await ledger.close();
      await files.clear();
    },
  };
};

/** The whole ledger derived anew from its rows: every hash, version, tile and checkpoint. */
export const verifyLedgerRow: Row = {
  name: 'verify-ledger',
  unit: 'events/s',
  better: 'more',
  peerName: 'bare leaf and node hashing',
  goal: 0.5,
  prepare,
};
