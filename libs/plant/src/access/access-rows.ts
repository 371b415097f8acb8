/** What someone can be guessed by: a PIN or a password, hashed. `shown`: in clear, for a demonstration's people only. */
export type GuessableRow = {
  readonly person: string;
  readonly hash: string;
  readonly shown: string | null;
  readonly failures: number;
  /** Milliseconds since 1970 UTC; no guess is looked at before. */
  readonly freeAt: number;
};

/** A session or a token, known by the SHA-256 of its secret. Times in milliseconds since 1970 UTC. */
export type SecretRow = {
  readonly hash: string;
  readonly kind: 'session' | 'token';
  readonly actor: string;
  /** A token's own role; null: whatever roles the person has. */
  readonly role: string | null;
  readonly name: string;
  readonly madeAt: number;
  readonly seenAt: number;
  /** Null: until it is withdrawn. */
  readonly expiresAt: number | null;
};

/** Who holds a session or a token. `role` null: a person, whose roles stand in the ledger. */
export type Holder = Omit<SecretRow, 'hash' | 'madeAt' | 'seenAt'>;

/** Something for the ledger of accesses, on its way there. `key` makes sure that it gets there once. */
export type NoteRow = { readonly key: string; readonly note: string };

/** Where sign-ins are kept: beside the ledger, not in it, because they may be taken away again. */
export type AccessRows = {
  readonly pins: () => Promise<readonly GuessableRow[]>;
  readonly pin: (person: string) => Promise<GuessableRow | undefined>;
  readonly putPin: (row: GuessableRow) => Promise<void>;
  readonly countGuess: (person: string, failures: number, freeAt: number) => Promise<void>;
  readonly secret: (hash: string) => Promise<SecretRow | undefined>;
  readonly secrets: (kind: SecretRow['kind']) => Promise<readonly SecretRow[]>;
  readonly putSecret: (row: SecretRow) => Promise<void>;
  readonly seen: (hash: string, at: number) => Promise<void>;
  readonly dropSecret: (hash: string) => Promise<void>;
  /** Everything that lets this account in. */
  readonly dropActor: (actor: string) => Promise<void>;
  readonly dropExpired: (now: number) => Promise<void>;
  readonly note: (row: NoteRow) => Promise<void>;
  /** Oldest first. */
  readonly notes: (limit: number) => Promise<readonly NoteRow[]>;
  readonly dropNotes: (keys: readonly string[]) => Promise<void>;
  readonly close: () => Promise<void>;
};
