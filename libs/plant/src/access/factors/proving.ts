import type { SignInMeans } from '@libs/record';
import type { AccessRows, FactorRow } from '../access-rows';
import type { Doorkeeping } from '../doorkeeping';
import { countGuess, forgetGuesses } from '../guesses';
import { guessMatches, hashSecret } from '../secret';
import { codeStep } from './codes';
import { PASSWORD_LEAST } from './passwords';
import { plainCode } from './readable-code';

/** What somebody shows to be who they say: a PIN or a password, and where there is one the code of their phone. */
export type Shown = { readonly secret: string; readonly code?: string | undefined };

/** Where they stand. A PIN is short: it counts only together with a tablet the plant knows. */
export type Doorstep = { readonly tablet: string | null; readonly pinCounts: boolean };

export type NotProven =
  | { readonly ok: false; readonly why: 'wrong' | 'code-needed' | 'code-wrong' | 'tablet-needed' }
  | { readonly ok: false; readonly why: 'too-many'; readonly retryAfterMs: number };
export type Proven = { readonly ok: true; readonly means: SignInMeans } | NotProven;

/** Whoever is tried under a name that nobody has: the name itself may be a PIN typed into the wrong field. */
const NOBODY = 'nobody';

/** Looks at what is shown. A wrong one is counted, and noted together with others. */
export const prove = async (
  door: Doorkeeping,
  person: string,
  shown: Shown,
  step: Doorstep,
): Promise<Proven> => {
  const kept = await keptOf(door.rows, person);
  const outcome = await lookAt(door, { person, shown, step, kept });
  if (!outcome.ok && outcome.why !== 'code-needed' && outcome.why !== 'tablet-needed')
    door.notes.signInRefused(kept.known ? person : NOBODY);
  return outcome;
};

type Kept = {
  readonly known: boolean;
  readonly pin: string | undefined;
  readonly password: string | undefined;
  readonly factors: readonly FactorRow[];
};
type Look = {
  readonly person: string;
  readonly shown: Shown;
  readonly step: Doorstep;
  readonly kept: Kept;
};

const keptOf = async (rows: AccessRows, person: string): Promise<Kept> => {
  const [pin, factors] = [(await rows.pin(person))?.hash, await rows.factors(person)];
  const password = factors.find(({ kind }) => kind === 'password')?.data;
  return { known: pin !== undefined || factors.length > 0, pin, password, factors };
};

const lookAt = async (door: Doorkeeping, look: Look): Promise<Proven> => {
  const { rows, now } = door;
  const { person, shown, step, kept } = look;
  const started = now();
  const guesses = await rows.guesses(person);
  if (guesses !== undefined && started < guesses.freeAt)
    return { ok: false, why: 'too-many', retryAfterMs: guesses.freeAt - started };
  // Said of everyone alike, before anything is looked at: it tells nothing about this person.
  if (shown.secret.length < PASSWORD_LEAST && !step.pinCounts) return { ok: false, why: 'tablet-needed' };

  if (kept.known) await countGuess(rows, person, guesses, started);
  const proven = await lookAtGuess(door, look);
  if (proven.ok) await forgetGuesses(rows, person);
  return proven;
};

const lookAtGuess = async (door: Doorkeeping, { shown, step, kept }: Look): Promise<Proven> => {
  const { means, hash } = wantedOf(shown.secret, kept);
  const counts = means === 'password' || step.pinCounts;
  if (!(await guessMatches(shown.secret, counts ? hash : undefined, door.cost)))
    return { ok: false, why: 'wrong' };

  // A tablet the plant knows is the second thing beside a PIN.
  if (means === 'pin' && step.tablet !== null) return { ok: true, means };
  const fault = await lookAtCode(door, kept.factors, shown.code);
  return fault === undefined ? { ok: true, means } : { ok: false, why: fault };
};

/** One of the two is looked at, so that both take as long to refuse: what is long is a password where there is one. */
const wantedOf = (
  secret: string,
  { pin, password }: Kept,
): { readonly means: 'pin' | 'password'; readonly hash: string | undefined } =>
  secret.length >= PASSWORD_LEAST && password !== undefined
    ? { means: 'password', hash: password }
    : { means: 'pin', hash: pin };

const lookAtCode = async (
  { rows, now, vault }: Doorkeeping,
  factors: readonly FactorRow[],
  given: string | undefined,
): Promise<'code-needed' | 'code-wrong' | undefined> => {
  const phone = factors.find(({ kind }) => kind === 'code');
  if (phone === undefined) return undefined;
  if (given === undefined || given === '') return 'code-needed';

  const secret = vault.open(phone.data, phone.id);
  const step = await codeStep(secret, given.replace(/\s/g, ''), { now: now(), usedStep: phone.used });
  if (step !== undefined) {
    await rows.useFactor(phone.id, step);
    return undefined;
  }
  const spare = hashSecret(plainCode(given));
  const recovery = factors.find(({ kind, data }) => kind === 'recovery' && data === spare);
  if (recovery === undefined) return 'code-wrong';
  await rows.dropFactor(recovery.id);
  return undefined;
};
