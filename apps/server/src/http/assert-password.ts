import type { PasswordFault } from '@libs/plant';
import { PASSWORD_LEAST, PASSWORD_MOST, passwordFault } from '@libs/plant';
import { Problem } from './problem';

const SAYS: { readonly [fault in PasswordFault]: string } = {
  'too-short': `has fewer than ${String(PASSWORD_LEAST)} characters; 15 and more are better`,
  'too-long': `has more than ${String(PASSWORD_MOST)} characters`,
  'too-common': 'is among those that everybody tries first',
  'names-the-person': 'is the name it belongs to',
};

/** By length and by what is known of it; never by which kinds of characters it has. */
export const assertPassword = (password: string, known: readonly string[]): void => {
  const fault = passwordFault(password, known);
  if (fault === undefined) return;
  throw new Problem({
    status: 422,
    code: `password-${fault}`,
    title: 'That password will not do',
    detail: `It ${SAYS[fault]}.`,
    errors: [{ pointer: '#/password', detail: SAYS[fault] }],
  });
};
