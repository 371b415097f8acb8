import type { JsonObject } from './json';

/** How it was known who acted. */
export type Assurance = 'pin' | 'session' | 'token' | 'claimed-offline';

/** By what road an entry came in. */
export type Via = 'tablet' | 'paper' | 'import' | 'instrument';

/**
 * Signed by hand: whoever sent it showed once more who they are, for this entry alone. `meaning`: what the signature
 * stands for. Who signed is the actor, what was signed is the entry itself.
 */
export type Signature = {
  readonly meaning: 'did' | 'inspected' | 'approved';
  readonly means: string;
  readonly at: string;
};

/** What the sender says of an entry, the same for all events it leads to. */
export type Meta = {
  /** Idempotency key, made by the device before it sends. UUIDv7 where ours to make. */
  readonly key: string;
  /** Opaque person or machine id; never a name. */
  readonly actor: string;
  readonly assurance: Assurance;
  /** When it happened on the floor, as the device says: RFC 3339, milliseconds, with offset. */
  readonly occurredAt: string;
  readonly device: string | null;
  /** The device's own counter. */
  readonly deviceSeq: number | null;
  /** Device clock minus ours, milliseconds. */
  readonly skewMs: number | null;
  readonly via: Via;
  /** Where it was really done. The operation's own station comes from the rulebook. */
  readonly station: string | null;
  readonly signature?: Signature;
};

/** An event as decided, before the ledger gives it a place. */
export type NewEvent = {
  readonly type: string;
  readonly data: JsonObject;
  /** The rulebook revision and build plan it was judged by, where it was judged. */
  readonly revision?: number;
  readonly planDigest?: string;
  /** Position of the event it mends. */
  readonly corrects?: number;
};

/**
 * The envelope, for ever. Only optional fields may be added.
 * Its RFC 8785 bytes are what is stored and hashed.
 */
export type Envelope = {
  /** Event name and shape version, `WorkRecorded/1`. */
  readonly schema: string;
  readonly ledger: string;
  /** From 1, without gaps. Leaf index is position minus one. */
  readonly position: number;
  readonly stream: string;
  /** From 1, without gaps, per stream. */
  readonly version: number;
  readonly occurredAt: string;
  /** UTC, the writer's clock, never backwards. */
  readonly recordedAt: string;
  readonly actor: string;
  readonly assurance: Assurance;
  readonly device: string | null;
  readonly deviceSeq: number | null;
  readonly skewMs: number | null;
  readonly via: Via;
  readonly station: string | null;
  readonly key: string;
  /** The event's place among those its command led to, from 0. */
  readonly keyIndex: number;
  readonly revision: number | null;
  readonly planDigest: string | null;
  readonly corrects?: number;
  readonly signature?: Signature;
  readonly data: JsonObject;
};

/** An event of a known union as it stands in the ledger. */
export type Recorded<E extends NewEvent> = E extends NewEvent
  ? Omit<Envelope, 'data'> & { readonly type: E['type']; readonly data: E['data'] }
  : never;
