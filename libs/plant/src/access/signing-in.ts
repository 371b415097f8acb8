import type { Access, SignIn } from './access';
import type { Doorkeeping } from './doorkeeping';
import { endSecret } from './doorkeeping';
import { countGuess, forgetGuesses } from './guesses';
import { oneAtATime } from './one-at-a-time';
import { guessMatches, hashGuessable, hashSecret, newSecret, secretId } from './secret';
import { SESSION_MS, sessionFor } from './sessions';

/** More sign-ins waiting than a plant has tablets is not people. */
const SIGN_INS_WAITING = 50;
const BUSY_MS = 5_000;
/** Whoever is tried under a name that nobody has: the name itself may be a PIN typed into the wrong field. */
const NOBODY = 'nobody';

type SigningIn = Pick<Access, 'addPerson' | 'offers' | 'signIn' | 'signOut' | 'letIn'>;

export const signingIn = (door: Doorkeeping): SigningIn => {
  const { rows, cost, notes, cache } = door;
  const queue = oneAtATime(SIGN_INS_WAITING);

  return {
    addPerson: async (person, pin, { shown = false, by = person } = {}) => {
      const hash = await hashGuessable(pin, cost);
      await notes.note({ type: 'AccessGiven', data: { account: person, means: 'pin' } }, by);
      await rows.putPin({ person, hash, shown: shown ? pin : null, failures: 0, freeAt: 0 });
    },
    offers: async () => (await rows.pins()).map(({ person, shown }) => ({ person, shown })),
    signIn: (person, pin, replaces) =>
      queue(() => signIn(door, { person, pin, replaces })) ??
      Promise.resolve({ ok: false, why: 'too-many', retryAfterMs: BUSY_MS }),
    signOut: async (session) => {
      const row = await rows.secret(hashSecret(session));
      if (row === undefined) return;
      await notes.note({ type: 'SignedOut', data: { account: row.actor, session: secretId(row.hash) } });
      cache.drop(row.hash);
      await rows.dropSecret(row.hash);
    },
    letIn: (person, means) => letIn(door, person, means),
  };
};

type Guess = { readonly person: string; readonly pin: string; readonly replaces: string | undefined };

const signIn = async (door: Doorkeeping, { person, pin, replaces }: Guess): Promise<SignIn> => {
  const { rows, notes } = door;
  const looked = await lookAtPin(door, person, pin);
  if (!looked.ok) {
    notes.signInRefused(looked.known ? person : NOBODY);
    return looked.answer;
  }
  const before = replaces === undefined ? undefined : await rows.secret(hashSecret(replaces));
  if (before?.kind === 'session') await endSecret(door, before, person);
  return letIn(door, person, 'pin');
};

const letIn = async (
  { rows, now, notes }: Doorkeeping,
  ...[person, means]: Parameters<Access['letIn']>
): ReturnType<Access['letIn']> => {
  const session = newSecret('');
  const hash = hashSecret(session);
  await notes.note({ type: 'SignedIn', data: { account: person, means, session: secretId(hash) } });
  await rows.dropExpired(now());
  await rows.putSecret(sessionFor(person, hash, now()));
  return { ok: true, session, expiresAt: now() + SESSION_MS };
};

type Looked =
  | { readonly ok: true }
  | { readonly ok: false; readonly known: boolean; readonly answer: SignIn & { readonly ok: false } };

const lookAtPin = async ({ rows, now, cost }: Doorkeeping, person: string, pin: string): Promise<Looked> => {
  const row = await rows.pin(person);
  const started = now();
  if (row !== undefined && started < row.freeAt) {
    const answer = { ok: false, why: 'too-many', retryAfterMs: row.freeAt - started } as const;
    return { ok: false, known: true, answer };
  }
  if (row !== undefined) await countGuess(rows, row, started);
  if (!(await guessMatches(pin, row?.hash, cost)))
    return { ok: false, known: row !== undefined, answer: { ok: false, why: 'wrong' } };

  await forgetGuesses(rows, person);
  return { ok: true };
};
