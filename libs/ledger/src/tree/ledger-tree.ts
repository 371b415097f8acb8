import type { HeadsTree } from '@libs/proof';

/** An event as it is stored: its very bytes, and the hash over them. */
export type StoredEvent = {
  readonly position: number;
  readonly stream: string;
  readonly version: number;
  readonly body: Uint8Array;
  readonly leaf: Uint8Array;
};

/** What the ledger can prove about itself, at any size it ever had. */
export type LedgerTree = {
  readonly rootAt: (size: number) => Promise<Uint8Array>;
  /** For each position the hashes that lead from its leaf to the root of the first `size` events. */
  readonly inclusion: (
    positions: readonly number[],
    size: number,
  ) => Promise<readonly (readonly Uint8Array[])[]>;
  /** For each earlier size, that the ledger of `size` events begins with it. */
  readonly consistency: (
    earlier: readonly number[],
    size: number,
  ) => Promise<readonly (readonly Uint8Array[])[]>;
  /** Over the last event of every stream, when the ledger had `size` events. */
  readonly headsAt: (size: number) => Promise<HeadsTree>;
  /** All events of these streams up to a position, by position. */
  readonly stored: (streams: readonly string[], upTo: number) => Promise<readonly StoredEvent[]>;
  /** When the event at this position was recorded. */
  readonly recordedAt: (position: number) => Promise<string>;
};

/** Checkpoints that were signed. One a size: the same size is never signed with another content. */
export type Checkpoints = {
  readonly at: (size: number) => Promise<string | undefined>;
  /** Sizes below or at this one, the latest first. */
  readonly sizesUpTo: (size: number, limit: number) => Promise<readonly number[]>;
  readonly latest: () => Promise<string | undefined>;
  /** Keeps it unless there is one of that size; returns the one that is kept. */
  readonly keep: (size: number, note: string) => Promise<string>;
};
