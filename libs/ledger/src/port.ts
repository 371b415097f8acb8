import type { Envelope, Meta, NewEvent, ReadStream, StreamKind } from '@libs/kernel';
import type { Observable } from 'rxjs';

/** One stream's share of an asking, decided in order; all are committed together or none is. */
export type Part<C, S, E extends NewEvent, R extends { readonly code: string }, F> = {
  readonly kind: StreamKind<C, S, E, R, F>;
  readonly id: string;
  readonly command: C;
  /** The facts of other streams the decision needs, read inside the writer. Pure; may be called more than once. */
  readonly facts: (read: ReadStream, meta: Meta) => F;
};

/** A part whose types have been checked and put away, so that parts of several kinds fit one list. */
export type AnyPart = {
  readonly stream: string;
  readonly kindName: string;
  readonly initial: unknown;
  readonly decide: (
    state: unknown,
    read: ReadStream,
    meta: Meta,
  ) =>
    | { readonly ok: true; readonly events: readonly NewEvent[] }
    | { readonly ok: false; readonly rejection: Rejection };
  readonly evolve: (state: unknown, event: Envelope & { readonly type: string }) => unknown;
  /** Runs the facts function only, so that the writer learns which streams are missing. */
  readonly gather: (read: ReadStream, meta: Meta) => void;
};

export type Rejection = { readonly code: string; readonly [field: string]: unknown };

export type Asking = {
  readonly parts: readonly AnyPart[];
  readonly meta: Meta;
  /** Canonical JSON of what was sent, before sealing; compared by HMAC when the key comes again. */
  readonly content: string;
};

export type Outcome =
  | { readonly ok: true; readonly events: readonly Envelope[]; readonly repeated: boolean }
  | { readonly ok: false; readonly rejection: Rejection };

/** The log of one plant. */
export type Ledger = {
  readonly id: string;
  /** Durable when it answers. Throws a Fault when the key was used for other content or the disk fails. */
  readonly ask: (asking: Asking) => Promise<Outcome>;
  /** Events after a position, in order. */
  readonly after: (position: number, limit: number) => Promise<readonly Envelope[]>;
  /** All events of these streams, by position. */
  readonly ofStreams: (streams: readonly string[]) => Promise<readonly Envelope[]>;
  readonly head: () => Promise<number>;
  /** Whether this is the ledger's one writer still. */
  readonly writes: () => Promise<boolean>;
  /** A stream's current state, from the writer's cache or the log. */
  readonly state: <S>(
    kind: { readonly name: string; readonly initial: S; readonly evolve: (state: S, event: never) => S },
    id: string,
  ) => Promise<S>;
  /** "There is something up to this position": news, never truth. */
  readonly news: Observable<number>;
  /** The events of each commit, in ledger order, once it is on disk and before its callers hear of it. */
  readonly commits: Observable<readonly Envelope[]>;
  readonly close: () => Promise<void>;
};

/** SQL as one of the two engines speaks it; parameters as `$1`-style on PostgreSQL, `?` on SQLite. */
export type Sql = {
  readonly dialect: 'sqlite' | 'postgres';
  readonly query: <T>(sql: string, parameters?: readonly unknown[]) => Promise<readonly T[]>;
};

/**
 * Keeps something inside the writer's own transaction: what must never be a commit behind the log, at the price of
 * being written with every commit. Read models need not: see `commits`.
 */
export type Keeper = {
  readonly name: string;
  readonly keep: (events: readonly Envelope[], sql: Sql) => Promise<void>;
  /** The transaction failed: forget whatever was cached for it. */
  readonly dropped: () => void;
};
