import { hash, randomBytes, scrypt, timingSafeEqual } from 'node:crypto';

/** 16 MiB a guess and some 50 ms: a stolen table of PINs costs days, a sign-in does not wait. */
const COST = { N: 16_384, r: 8, p: 1 } as const;
const KEY_BYTES = 32;

const derive = (pin: string, salt: Buffer): Promise<Buffer> =>
  new Promise((resolve, reject) => {
    scrypt(pin.normalize('NFC'), salt, KEY_BYTES, COST, (error, key) => {
      if (error) reject(error);
      else resolve(key);
    });
  });

/** `salt$key`, both base64. The PIN itself is kept nowhere. */
export const hashPin = async (pin: string): Promise<string> => {
  const salt = randomBytes(16);
  return `${salt.toString('base64')}$${(await derive(pin, salt)).toString('base64')}`;
};

/** Someone unknown takes as long to refuse as someone known, so that names cannot be tried out. */
const NOBODY = `${Buffer.alloc(16).toString('base64')}$${Buffer.alloc(KEY_BYTES).toString('base64')}`;

export const pinMatches = async (pin: string, kept: string | undefined): Promise<boolean> => {
  const [salt = '', key = ''] = (kept ?? NOBODY).split('$');
  const derived = await derive(pin, Buffer.from(salt, 'base64'));
  return timingSafeEqual(derived, Buffer.from(key, 'base64')) && kept !== undefined;
};

/** 256 random bits. Nobody guesses that, so a plain SHA-256 of it is enough to keep. */
export const newSecret = (prefix: string): string => `${prefix}${randomBytes(32).toString('base64url')}`;

export const hashSecret = (secret: string): string => hash('sha256', secret, 'hex');
