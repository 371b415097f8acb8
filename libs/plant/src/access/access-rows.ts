/** A person's PIN, hashed. `shown`: the PIN in clear, for a demonstration's invented people only. */
export type PinRow = {
  readonly person: string;
  readonly hash: string;
  readonly shown: string | null;
  readonly failures: number;
  /** Milliseconds since 1970 UTC; no guess is looked at before. */
  readonly freeAt: number;
};

/** A session or a token, known by the SHA-256 of its secret. */
export type SecretRow = {
  readonly hash: string;
  readonly kind: 'session' | 'token';
  readonly actor: string;
  /** A token's own role; null: whatever roles the person has. */
  readonly role: string | null;
  readonly name: string;
  /** Milliseconds since 1970 UTC; null: until it is withdrawn. */
  readonly expiresAt: number | null;
};

/** Who holds a session or a token. `role` null: a person, whose roles stand in the ledger. */
export type Holder = Omit<SecretRow, 'hash'>;

/** Where sign-ins are kept: beside the ledger, not in it, because they may be taken away again. */
export type AccessRows = {
  readonly pins: () => Promise<readonly PinRow[]>;
  readonly pin: (person: string) => Promise<PinRow | undefined>;
  readonly putPin: (row: PinRow) => Promise<void>;
  readonly countGuess: (person: string, failures: number, freeAt: number) => Promise<void>;
  readonly secret: (hash: string) => Promise<SecretRow | undefined>;
  readonly secrets: (kind: 'session' | 'token') => Promise<readonly SecretRow[]>;
  readonly putSecret: (row: SecretRow) => Promise<void>;
  readonly dropSecret: (hash: string) => Promise<void>;
  readonly dropActor: (actor: string) => Promise<void>;
  readonly dropExpired: (now: number) => Promise<void>;
  readonly close: () => Promise<void>;
};
