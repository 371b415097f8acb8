import { hash, randomBytes } from 'node:crypto';
import { Algorithm, hash as argon2, verify } from '@node-rs/argon2';

/** Of Argon2id (RFC 9106), one lane. */
export type GuessCost = { readonly memoryKiB: number; readonly passes: number };

/**
 * What one guess costs: 19 MiB and two passes, one of the equal choices of the OWASP Password Storage Cheat Sheet.
 * It is the one that takes little memory, so that a sign-in does not push the plant aside.
 */
export const GUESS_COST: GuessCost = { memoryKiB: 19_456, passes: 2 };
const SALT_BYTES = 16;

/** `$argon2id$v=19$m=...`: the cost stands with each, so that it can be raised and older ones still be read. */
const derive = (text: string, { memoryKiB, passes }: GuessCost, salt: Buffer): Promise<string> =>
  argon2(text.normalize('NFC'), {
    algorithm: Algorithm.Argon2id,
    memoryCost: memoryKiB,
    timeCost: passes,
    parallelism: 1,
    salt,
  });

/** A PIN or a password; itself it is kept nowhere. */
export const hashGuessable = (text: string, cost: GuessCost): Promise<string> =>
  derive(text, cost, randomBytes(SALT_BYTES));

/** Someone unknown takes as long to refuse as someone known, so that names cannot be tried out. */
export const guessMatches = async (
  text: string,
  kept: string | undefined,
  cost: GuessCost,
): Promise<boolean> => {
  if (kept !== undefined) return verify(kept, text.normalize('NFC'));
  await derive(text, cost, Buffer.alloc(SALT_BYTES));
  return false;
};

/** 256 random bits. Nobody guesses that, so a plain SHA-256 of it is enough to keep. */
export const newSecret = (prefix: string): string => `${prefix}${randomBytes(32).toString('base64url')}`;

export const hashSecret = (secret: string): string => hash('sha256', secret, 'hex');

/** What a session or a token is called where it is listed: it opens nothing. */
export const secretId = (hashed: string): string => hashed.slice(0, 12);
