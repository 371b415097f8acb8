import type { Sql } from '../port';
import type { Commit } from '../writer/log-store';

/** What the two engines say differently. Everything else is the same SQL. */
export type Engine = {
  /** The writer's own connection. */
  readonly writer: Sql;
  /** Read-only; any number of callers. */
  readonly reader: Sql;
  readonly begin: () => Promise<void>;
  /** Throws CommitUncertain where nobody can know. */
  readonly commit: () => Promise<void>;
  /** Leaves no transaction open, whatever happened to it. */
  readonly rollback: () => Promise<void>;
  /**
   * Moves the writer row and adds the events and their keys, in one trip to the database. False when the writer
   * row is not as `tenure` has it; throws KeyTaken.
   */
  readonly record: (ledger: string, commit: Commit) => Promise<boolean>;
  /** `record` outside of a transaction is one of its own, and its failure leaves no doubt. */
  readonly recordsAlone: boolean;
  /** `column` is among the texts of the list given as parameter `$1`. */
  readonly among: (column: string) => string;
  readonly list: (texts: readonly string[]) => unknown;
  readonly lease: Lease;
  readonly close: () => Promise<void>;
};

/** How a writer holds a ledger against others that would. */
export type Lease = {
  /** Raises the epoch, or throws WriterElsewhere. */
  readonly take: (ledger: string) => Promise<{ readonly epoch: number }>;
  /** What an update of the writer row sets besides, so that each commit renews the lease. */
  readonly renewal: string;
  /** What it sets to let go. */
  readonly release: string;
  /** How often a writer with nothing to commit has to say that it is alive; undefined: never. */
  readonly renewEveryMs: number | undefined;
};
