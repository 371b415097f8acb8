import type { NotProven } from '@libs/plant';
import { Problem } from './problem';

/** The same answer for a wrong person, a wrong PIN and someone who left: none of them is told which. */
export const wrongPin = (): Problem =>
  new Problem({
    status: 401,
    code: 'pin-wrong',
    title: 'That person and PIN do not go together',
    errors: [{ pointer: '#/pin', detail: 'does not go with this person' }],
  });

const tooMany = (ms: number): Problem => {
  const seconds = Math.ceil(ms / 1_000);
  return new Problem({
    status: 429,
    code: 'too-many-guesses',
    title: 'Too many wrong PINs',
    detail: `Try again in ${String(seconds)} seconds.`,
    headers: { 'retry-after': String(seconds) },
  });
};

const code = (title: string, name: string): Problem =>
  new Problem({
    status: 401,
    code: name,
    title,
    errors: [{ pointer: '#/code', detail: 'six digits, or a recovery code' }],
  });

export const notSignedIn = (outcome: NotProven): Problem => {
  switch (outcome.why) {
    case 'too-many':
      return tooMany(outcome.retryAfterMs);
    case 'code-needed':
      return code('Give the code of your authenticator application too', 'code-needed');
    case 'code-wrong':
      return code('That code is wrong, or was used already', 'code-wrong');
    case 'tablet-needed':
      return new Problem({
        status: 403,
        code: 'tablet-needed',
        title: 'A PIN counts only on a tablet of the plant',
        detail: 'Sign in with your password or a passkey here, or have an administrator bind this tablet.',
      });
    default:
      return wrongPin();
  }
};
