import { hash, randomBytes, scrypt, timingSafeEqual } from 'node:crypto';

export type PinCost = { readonly log2N: number; readonly r: number; readonly p: number };

/**
 * What one guess costs: 16 MiB and some 0.2 s. From the OWASP Password Storage Cheat Sheet's list of equal choices
 * for scrypt (N = 2^14, r = 8, p = 5), the one that takes the least memory: a sign-in does not push the plant aside.
 */
export const PIN_COST: PinCost = { log2N: 14, r: 8, p: 5 };
const KEY_BYTES = 32;

type Kept = { readonly cost: PinCost; readonly salt: Buffer; readonly key: Buffer };

const derive = (pin: string, salt: Buffer, { log2N, r, p }: PinCost): Promise<Buffer> =>
  new Promise((resolve, reject) => {
    scrypt(pin.normalize('NFC'), salt, KEY_BYTES, { N: 2 ** log2N, r, p }, (error, key) => {
      if (error) reject(error);
      else resolve(key);
    });
  });

/** `scrypt$14$8$5$salt$key`: the cost stands with each, so that it can be raised and older ones still be read. */
const written = ({ cost: { log2N, r, p }, salt, key }: Kept): string =>
  ['scrypt', log2N, r, p, salt.toString('base64'), key.toString('base64')].join('$');

const read = (kept: string): Kept => {
  const [, log2N, r, p, salt = '', key = ''] = kept.split('$');
  return {
    cost: { log2N: Number(log2N), r: Number(r), p: Number(p) },
    salt: Buffer.from(salt, 'base64'),
    key: Buffer.from(key, 'base64'),
  };
};

/** The PIN itself is kept nowhere. */
export const hashPin = async (pin: string, cost: PinCost): Promise<string> => {
  const salt = randomBytes(16);
  return written({ cost, salt, key: await derive(pin, salt, cost) });
};

/** Someone unknown takes as long to refuse as someone known, so that names cannot be tried out. */
const NOBODY = written({ cost: PIN_COST, salt: Buffer.alloc(16), key: Buffer.alloc(KEY_BYTES) });

export const pinMatches = async (pin: string, kept: string | undefined): Promise<boolean> => {
  const { cost, salt, key } = read(kept ?? NOBODY);
  return timingSafeEqual(await derive(pin, salt, cost), key) && kept !== undefined;
};

/** 256 random bits. Nobody guesses that, so a plain SHA-256 of it is enough to keep. */
export const newSecret = (prefix: string): string => `${prefix}${randomBytes(32).toString('base64url')}`;

export const hashSecret = (secret: string): string => hash('sha256', secret, 'hex');
