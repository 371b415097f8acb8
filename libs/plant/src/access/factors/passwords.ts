import { dictionary } from '@zxcvbn-ts/language-common';

/** ASVS 5.0 6.2.1: at least 8; 15 and more are what is asked for in words. */
export const PASSWORD_LEAST = 8;
/** Ten of the longest sentences anybody types. Nothing is cut off: what is longer is refused. */
export const PASSWORD_MOST = 128;

export type PasswordFault = 'too-short' | 'too-long' | 'too-common' | 'names-the-person';

/** ASVS 5.0 6.2.4 and 6.2.12: 49 000 passwords that breaches have made known, as far as they are long enough. */
const COMMON: ReadonlySet<string> = new Set(
  dictionary['passwords-common']
    .map((word) => word.toLowerCase())
    .filter((word) => word.length >= PASSWORD_LEAST),
);

/** Of any characters (6.2.5), looked at just as it was typed (6.2.8). Undefined: it will do. */
export const passwordFault = (password: string, known: readonly string[]): PasswordFault | undefined => {
  // Characters as Unicode counts them (ASVS 5.0, 6.2.1): half of a pair is none.
  const { length } = Array.from(password);
  if (length < PASSWORD_LEAST) return 'too-short';
  if (length > PASSWORD_MOST) return 'too-long';
  const plain = password.toLowerCase();
  if (COMMON.has(plain)) return 'too-common';
  return known.some((word) => plain === word.toLowerCase()) ? 'names-the-person' : undefined;
};
