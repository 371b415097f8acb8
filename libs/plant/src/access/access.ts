import type { SignInMeans } from '@libs/record';
import type { AccessNotes } from './access-notes';
import type { Holder, SecretRow } from './access-rows';
import type { OwnFactors } from './factors/own-factors';
import type { Passkeys } from './factors/passkeys';
import type { Doorstep, NotProven, Proven, Shown } from './factors/proving';
import type { Links } from './links';
import type { Tablets } from './tablets/tablets';

export type SignIn = { readonly ok: true; readonly session: string; readonly expiresAt: number } | NotProven;

export type SignInOffer = { readonly person: string; readonly shown: string | null };

/** A session or a token as it is listed. Times in milliseconds since 1970 UTC. */
export type Listed = Omit<SecretRow, 'hash'> & { readonly id: string };

/** Who may come in: PINs, passwords, codes, passkeys, sessions, tokens and tablets. `by`: who does it. */
export type Access = OwnFactors &
  Links &
  Passkeys &
  Tablets & {
    /** Sets a person's PIN. `shown` keeps it in clear too: for a demonstration's invented people, never else. */
    readonly addPerson: (
      person: string,
      pin: string,
      more?: { readonly shown?: boolean; readonly by?: string },
    ) => Promise<void>;
    /** Who may sign in by PIN. */
    readonly offers: () => Promise<readonly SignInOffer[]>;
    /** Whether someone is who they say; wrong answers are counted as at a sign-in. */
    readonly prove: (person: string, shown: Shown, step: Doorstep) => Promise<Proven>;
    /** `replaces`: the session that was there before on the same device; it ends. */
    readonly signIn: (person: string, shown: Shown, step: Doorstep, replaces?: string) => Promise<SignIn>;
    readonly signOut: (session: string) => Promise<void>;
    /** Opens a session for someone who has shown who they are by other means than a PIN. */
    readonly letIn: (
      person: string,
      means: SignInMeans,
      more?: { readonly tablet?: string | null; readonly replaces?: string | undefined },
    ) => Promise<SignIn & { readonly ok: true }>;
    /** The token is shown once, here; afterwards only its hash is known. */
    readonly makeToken: (
      wish: { readonly role: string; readonly name: string; readonly scopes?: readonly string[] | null },
      by?: string,
    ) => Promise<{ readonly token: string; readonly actor: string }>;
    readonly listed: (kind: SecretRow['kind']) => Promise<readonly Listed[]>;
    /** Ends one session or token by the id it is listed under. False: there is none. */
    readonly end: (id: string, by: string) => Promise<boolean>;
    /** Ends all sessions of a person: their roles or their PIN are others now. */
    readonly endSessions: (person: string, by: string) => Promise<void>;
    /** Withdraws all that lets an account in. */
    readonly withdraw: (account: string, by?: string) => Promise<void>;
    readonly whoIs: (tokenOrSession: string) => Promise<Holder | undefined>;
    /** Told each time something that lets someone in has ended. Returns what to call to stop listening. */
    readonly onEnded: (listener: () => void) => () => void;
    readonly notes: AccessNotes;
    readonly close: () => Promise<void>;
  };
