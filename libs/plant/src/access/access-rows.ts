/** What someone can be guessed by: a PIN or a password, hashed. `shown`: in clear, for a demonstration's people only. */
export type GuessableRow = {
  readonly person: string;
  readonly hash: string;
  readonly shown: string | null;
};

/** How often in a row someone was guessed wrong, whatever was guessed at. */
export type GuessesRow = {
  readonly failures: number;
  /** Milliseconds since 1970 UTC; no guess is looked at before. */
  readonly freeAt: number;
};

/** Of a link: what it opens. */
export type LinkPurpose = 'installer' | 'owner' | 'owner-with-defects';

export type FactorKind =
  | 'password'
  | 'code'
  | 'code-unconfirmed'
  | 'recovery'
  | 'passkey'
  | 'invitation'
  | 'provider'
  | `link-${LinkPurpose}`;

/**
 * What a person shows besides a PIN. `data`: a hash, a sealed secret or a public key, as the kind has it. A link stands
 * here too, under the home it opens in the person's place.
 */
export type FactorRow = {
  readonly id: string;
  readonly person: string;
  readonly kind: FactorKind;
  readonly name: string;
  readonly data: string;
  readonly madeAt: number;
  /** Milliseconds since 1970 UTC; 0: never. Of a code: the time step last used, which must not come again. */
  readonly used: number;
  /** Null: until it is taken away. */
  readonly expiresAt: number | null;
};

/** A tablet that PINs count on. `hash`: of the code that binds it, and once bound of the secret it keeps. */
export type TabletRow = {
  readonly tablet: string;
  readonly name: string;
  /** Station ids, as JSON. */
  readonly stations: string;
  readonly hash: string;
  readonly bound: boolean;
  readonly madeAt: number;
  readonly seenAt: number;
  /** Of the code; null once bound. */
  readonly expiresAt: number | null;
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
  /** The bound tablet a session was opened on; it ends with the tablet. */
  readonly tablet: string | null;
  /** What a token may of what its role may; null: all of it. */
  readonly scopes: readonly string[] | null;
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
  readonly guesses: (person: string) => Promise<GuessesRow | undefined>;
  readonly countGuess: (person: string, failures: number, freeAt: number) => Promise<void>;
  readonly factors: (person: string) => Promise<readonly FactorRow[]>;
  /** All of a kind with this data: who an invitation, a passkey or a provider's account belongs to. */
  readonly factorsWith: (kind: FactorKind, data: string) => Promise<readonly FactorRow[]>;
  readonly factor: (id: string) => Promise<FactorRow | undefined>;
  /** Makes it, or puts it in the place of the one of the same id. */
  readonly putFactor: (row: FactorRow) => Promise<void>;
  readonly dropFactor: (id: string) => Promise<void>;
  readonly useFactor: (id: string, used: number) => Promise<void>;
  readonly tablets: () => Promise<readonly TabletRow[]>;
  readonly tabletWith: (hash: string) => Promise<TabletRow | undefined>;
  readonly putTablet: (row: TabletRow) => Promise<void>;
  /** And every session that was opened on it. */
  readonly dropTablet: (tablet: string) => Promise<void>;
  readonly tabletSeen: (tablet: string, at: number) => Promise<void>;
  readonly secret: (hash: string) => Promise<SecretRow | undefined>;
  readonly secrets: (kind: SecretRow['kind']) => Promise<readonly SecretRow[]>;
  readonly putSecret: (row: SecretRow) => Promise<void>;
  readonly seen: (hash: string, at: number) => Promise<void>;
  readonly dropSecret: (hash: string) => Promise<void>;
  /** Sessions of one person; programs and what they sign in with stay. */
  readonly dropSessions: (actor: string) => Promise<void>;
  /** Everything that lets this account in. */
  readonly dropActor: (actor: string) => Promise<void>;
  readonly dropExpired: (now: number) => Promise<void>;
  readonly note: (row: NoteRow) => Promise<void>;
  /** Oldest first. */
  readonly notes: (limit: number) => Promise<readonly NoteRow[]>;
  readonly dropNotes: (keys: readonly string[]) => Promise<void>;
  readonly close: () => Promise<void>;
};
