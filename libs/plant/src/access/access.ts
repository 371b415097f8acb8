import type { AccessRows, Holder, SecretRow } from './access-rows';
import { countGuess, forgetGuesses } from './guesses';
import { known } from './known';
import { oneAtATime } from './one-at-a-time';
import type { PinCost } from './secret';
import { hashPin, hashSecret, newSecret, PIN_COST, pinMatches } from './secret';

export type SignIn =
  | { readonly ok: true; readonly session: string; readonly expiresAt: number }
  | { readonly ok: false; readonly why: 'wrong' }
  | { readonly ok: false; readonly why: 'too-many'; readonly retryAfterMs: number };

export type SignInOffer = { readonly person: string; readonly shown: string | null };

/** Who may come in: PINs, sessions and tokens, of which only hashes are kept. */
export type Access = {
  /** `shown` keeps the PIN in clear too: for a demonstration's invented people, never else. */
  readonly addPerson: (person: string, pin: string, shown?: boolean) => Promise<void>;
  /** Who may sign in by PIN. */
  readonly offers: () => Promise<readonly SignInOffer[]>;
  readonly signIn: (person: string, pin: string) => Promise<SignIn>;
  readonly signOut: (session: string) => Promise<void>;
  /** The token is shown once, here; afterwards only its hash is known. */
  readonly makeToken: (wish: {
    readonly role: string;
    readonly name: string;
  }) => Promise<{ readonly token: string; readonly actor: string }>;
  readonly tokens: () => Promise<readonly Holder[]>;
  /** Withdraws all sessions and tokens of an actor. */
  readonly withdraw: (actor: string) => Promise<void>;
  readonly whoIs: (tokenOrSession: string) => Promise<Holder | undefined>;
  readonly close: () => Promise<void>;
};

/** A shift with its overtime: nobody signs in twice a day, nobody stays signed in overnight. */
const SESSION_MS = 12 * 3_600_000;
/** More sign-ins waiting than a plant has tablets is not people. */
const SIGN_INS_WAITING = 50;
const BUSY_MS = 5_000;

export const accessOver = (
  rows: AccessRows,
  now: () => number = Date.now,
  cost: PinCost = PIN_COST,
): Access => {
  const cache = known();
  const queue = oneAtATime(SIGN_INS_WAITING);

  return {
    addPerson: async (person, pin, shown = false) => {
      const hash = await hashPin(pin, cost);
      await rows.putPin({ person, hash, shown: shown ? pin : null, failures: 0, freeAt: 0 });
    },
    offers: async () => (await rows.pins()).map(({ person, shown }) => ({ person, shown })),
    signIn: (person, pin) =>
      queue(() => lookAtPin(rows, person, pin, now)) ??
      Promise.resolve({ ok: false, why: 'too-many', retryAfterMs: BUSY_MS }),
    signOut: async (session) => {
      const hash = hashSecret(session);
      cache.drop(hash);
      await rows.dropSecret(hash);
    },
    makeToken: async ({ role, name }) => {
      const token = newSecret('sbk_');
      const actor = `token-${hashSecret(token).slice(0, 12)}`;
      await rows.putSecret({ hash: hashSecret(token), kind: 'token', actor, role, name, expiresAt: null });
      return { token, actor };
    },
    tokens: async () => (await rows.secrets('token')).map(holderOf),
    withdraw: async (actor) => {
      await rows.dropActor(actor);
      cache.clear();
    },
    whoIs: async (secret) => {
      const hash = hashSecret(secret);
      return cache.get(hash, now()) ?? lookUp(rows, hash, now(), cache.put);
    },
    close: () => rows.close(),
  };
};

const holderOf = ({ kind, actor, role, name, expiresAt }: SecretRow): Holder => ({
  kind,
  actor,
  role,
  name,
  expiresAt,
});

const lookUp = async (
  rows: AccessRows,
  hash: string,
  now: number,
  keep: (hash: string, holder: Holder, now: number) => void,
): Promise<Holder | undefined> => {
  const row = await rows.secret(hash);
  if (row === undefined || (row.expiresAt !== null && row.expiresAt <= now)) return undefined;

  const holder = holderOf(row);
  keep(hash, holder, now);
  return holder;
};

const lookAtPin = async (
  rows: AccessRows,
  person: string,
  pin: string,
  now: () => number,
): Promise<SignIn> => {
  const row = await rows.pin(person);
  const started = now();
  if (row !== undefined && started < row.freeAt) {
    return { ok: false, why: 'too-many', retryAfterMs: row.freeAt - started };
  }
  if (row !== undefined) await countGuess(rows, row, started);
  if (!(await pinMatches(pin, row?.hash))) return { ok: false, why: 'wrong' };

  await forgetGuesses(rows, person);
  await rows.dropExpired(started);
  const session = newSecret('');
  const expiresAt = now() + SESSION_MS;
  await rows.putSecret({
    hash: hashSecret(session),
    kind: 'session',
    actor: person,
    role: null,
    name: '',
    expiresAt,
  });
  return { ok: true, session, expiresAt };
};
