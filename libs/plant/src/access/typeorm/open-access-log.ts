import type { Envelope } from '@libs/kernel';
import { openKeyStore } from '@libs/ledger';
import { openLedger } from '@libs/ledger/typeorm';
import type { LedgerOptions } from '@libs/ledger/typeorm';
import { takeNotes } from '../access-log';
import type { AccessNotes } from '../access-notes';
import type { AccessRows } from '../access-rows';

/** The ledger of accesses, as its one writer: the server's. The command line only leaves notes. */
export type AccessLog = {
  /** Takes in what was noted since. */
  readonly takeIn: () => Promise<void>;
  /** Events after a position, in order. */
  readonly after: (position: number, limit: number) => Promise<readonly Envelope[]>;
  readonly head: () => Promise<number>;
  readonly close: () => Promise<void>;
};

export type AccessLogPlace = {
  readonly at: LedgerOptions['at'];
  /** Folder of the plant's keys. */
  readonly keys: string;
  /** Told when the ledger could not be written; the notes wait and are tried again. */
  readonly trouble: (error: unknown) => void;
  readonly clock?: () => number;
};

/** How long something noted may wait before it stands in the ledger. */
const EVERY_MS = 1_000;
/** What comes in faster than it is taken waits for the next time: whoever asks for the ledger is not kept waiting. */
const ROUNDS = 20;

export const openAccessLog = async (
  { at, keys, trouble, clock = Date.now }: AccessLogPlace,
  { rows, notes }: { readonly rows: AccessRows; readonly notes: AccessNotes },
): Promise<AccessLog> => {
  const secret = openKeyStore(keys).digestKey;
  const ledger = await openLedger({ at, name: 'Accesses', clock, secret, keepers: [] });

  let last: Promise<void> = Promise.resolve();
  const takeAll = async (): Promise<void> => {
    await notes.settle();
    for (let round = 0; round < ROUNDS && (await takeNotes(rows, ledger)) > 0; round += 1);
  };
  // One after the other: two at once would send the same notes twice.
  const takeIn = (): Promise<void> => (last = last.then(takeAll, takeAll));

  const timer = setInterval(() => void takeIn().catch(trouble), EVERY_MS);
  timer.unref();

  return {
    takeIn,
    after: async (position, limit) => {
      await takeIn();
      return ledger.after(position, limit);
    },
    head: () => ledger.head(),
    close: async () => {
      clearInterval(timer);
      await notes.settle(true);
      // What is left over is in the table, and is taken in when the server is up again.
      await takeIn();
      await ledger.close();
    },
  };
};
