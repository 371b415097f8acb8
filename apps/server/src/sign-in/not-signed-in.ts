import type { SignIn } from '@libs/plant';
import { Problem } from '../http/problem';

/** The same answer for a wrong person, a wrong PIN and someone who left: none of them is told which. */
export const wrongPin = (): Problem =>
  new Problem({
    status: 401,
    code: 'pin-wrong',
    title: 'That person and PIN do not go together',
    errors: [{ pointer: '#/pin', detail: 'does not go with this person' }],
  });

export const notSignedIn = (outcome: Extract<SignIn, { ok: false }>): Problem => {
  if (outcome.why === 'wrong') return wrongPin();

  const seconds = Math.ceil(outcome.retryAfterMs / 1_000);
  return new Problem({
    status: 429,
    code: 'too-many-guesses',
    title: 'Too many wrong PINs',
    detail: `Try again in ${String(seconds)} seconds.`,
    headers: { 'retry-after': String(seconds) },
  });
};
