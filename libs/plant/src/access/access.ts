import type { SignInMeans } from '@libs/record';
import type { AccessNotes } from './access-notes';
import type { Holder, SecretRow } from './access-rows';

export type SignIn =
  | { readonly ok: true; readonly session: string; readonly expiresAt: number }
  | { readonly ok: false; readonly why: 'wrong' }
  | { readonly ok: false; readonly why: 'too-many'; readonly retryAfterMs: number };

export type SignInOffer = { readonly person: string; readonly shown: string | null };

/** A session or a token as it is listed. Times in milliseconds since 1970 UTC. */
export type Listed = Omit<SecretRow, 'hash'> & { readonly id: string };

/** Who may come in: PINs, sessions and tokens, of which only hashes are kept. `by`: who does it. */
export type Access = {
  /** Sets a person's PIN. `shown` keeps it in clear too: for a demonstration's invented people, never else. */
  readonly addPerson: (
    person: string,
    pin: string,
    more?: { readonly shown?: boolean; readonly by?: string },
  ) => Promise<void>;
  /** Who may sign in by PIN. */
  readonly offers: () => Promise<readonly SignInOffer[]>;
  /** `replaces`: the session that was there before on the same device; it ends. */
  readonly signIn: (person: string, pin: string, replaces?: string) => Promise<SignIn>;
  readonly signOut: (session: string) => Promise<void>;
  /** Opens a session for someone who has shown who they are by other means than a PIN. */
  readonly letIn: (person: string, means: SignInMeans) => Promise<SignIn & { readonly ok: true }>;
  /** The token is shown once, here; afterwards only its hash is known. */
  readonly makeToken: (
    wish: { readonly role: string; readonly name: string },
    by?: string,
  ) => Promise<{ readonly token: string; readonly actor: string }>;
  readonly listed: (kind: SecretRow['kind']) => Promise<readonly Listed[]>;
  /** Ends one session or token by the id it is listed under. False: there is none. */
  readonly end: (id: string, by: string) => Promise<boolean>;
  /** Withdraws all that lets an account in. */
  readonly withdraw: (account: string, by?: string) => Promise<void>;
  readonly whoIs: (tokenOrSession: string) => Promise<Holder | undefined>;
  readonly notes: AccessNotes;
  readonly close: () => Promise<void>;
};
