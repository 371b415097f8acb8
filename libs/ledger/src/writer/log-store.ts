import type { Envelope } from '@libs/kernel';
import type { Sql } from '../port';

/** Events with the very texts that are stored and the hashes over them. */
export type Written = {
  readonly envelopes: readonly Envelope[];
  /** RFC 8785 texts; never serialised again. */
  readonly bodies: readonly string[];
  /** The same texts as bytes, at `starts`, so many bytes as `lengths` says. */
  readonly block: Buffer;
  readonly starts: readonly number[];
  readonly lengths: readonly number[];
  /** A leaf of 32 bytes for each. */
  readonly leaves: Buffer;
};

/** The key an asking came under, what it said, and the events it led to: positions `first` to `first + count - 1`. */
export type AnsweredKey = {
  readonly key: string;
  readonly digest: Buffer;
  readonly first: number;
  readonly count: number;
};

export type Tenure = { readonly epoch: number; readonly head: number; readonly recordedAt: string };

export type Commit = {
  readonly tenure: Tenure;
  readonly events: Written;
  readonly keys: readonly AnsweredKey[];
};

/**
 * What the writer needs of a database. Every call is awaited before the next one is made. Each throws
 * WriterSuperseded when another writer has taken over.
 */
export type LogStore = {
  /** Where the log stands after a commit that failed. */
  readonly standing: (epoch: number) => Promise<Tenure>;
  /** Which of these keys were answered before. */
  readonly answered: (keys: readonly string[], epoch: number) => Promise<readonly AnsweredKey[]>;
  readonly events: (first: number, count: number) => Promise<readonly Envelope[]>;
  /** Hands each event of these streams over, in order of version within a stream. */
  readonly replay: (streams: readonly string[], each: (event: Envelope) => void) => Promise<void>;
  /**
   * One transaction: the writer row, the events, the keys and what the keepers do. Durable when it returns;
   * when it throws, nothing is left of it, unless it throws CommitUncertain. Throws KeyTaken when one of the keys
   * was answered before.
   */
  readonly commit: (commit: Commit) => Promise<void>;
  /** A transaction of its own beside the commits, for the writer that still holds the ledger. */
  readonly transaction: <T>(epoch: number, work: (sql: Sql) => Promise<T>) => Promise<T>;
  /** Says that this writer is alive. */
  readonly renew: (epoch: number) => Promise<void>;
  /** Lets go of the ledger, so that the next writer need not wait. */
  readonly release: (epoch: number) => Promise<void>;
};

/** One of the keys of a batch was answered before. */
export class KeyTaken extends Error {
  constructor(options: { readonly cause: unknown }) {
    super('A key of this batch was answered before', options);
    this.name = 'KeyTaken';
  }
}

/** Whether the commit is on disk nobody can say: the connection broke while committing. */
export class CommitUncertain extends Error {
  constructor(options: { readonly cause: unknown }) {
    super('The connection was lost while committing', options);
    this.name = 'CommitUncertain';
  }
}
