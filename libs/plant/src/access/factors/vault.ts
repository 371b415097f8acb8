import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto';

/** Keeps what must be read again, such as the secret a phone's codes come from. `place`: it opens nowhere else. */
export type Vault = {
  readonly seal: (text: string, place: string) => string;
  readonly open: (sealed: string, place: string) => string;
};

const CIPHER = 'aes-256-gcm';
const KEY_BYTES = 32;
const NONCE_BYTES = 12;
const TAG_BYTES = 16;

/** A key of its own, drawn from the plant's (RFC 5869): what one is used for says nothing of the other. */
export const vaultUnder = (plantKey: Buffer): Vault => {
  const key = Buffer.from(hkdfSync('sha256', plantKey, '', 'studbook second factors', KEY_BYTES));
  return {
    seal: (text, place) => {
      const nonce = randomBytes(NONCE_BYTES);
      const cipher = createCipheriv(CIPHER, key, nonce).setAAD(Buffer.from(place));
      const box = Buffer.concat([nonce, cipher.update(text, 'utf8'), cipher.final(), cipher.getAuthTag()]);
      return box.toString('base64url');
    },
    open: (sealed, place) => {
      const box = Buffer.from(sealed, 'base64url');
      const decipher = createDecipheriv(CIPHER, key, box.subarray(0, NONCE_BYTES), {
        authTagLength: TAG_BYTES,
      })
        .setAAD(Buffer.from(place))
        .setAuthTag(box.subarray(-TAG_BYTES));
      return Buffer.concat([
        decipher.update(box.subarray(NONCE_BYTES, -TAG_BYTES)),
        decipher.final(),
      ]).toString('utf8');
    },
  };
};

/** Of a process that only gives PINs and tokens, as the command line: it has no plant's key at hand. */
export const NO_VAULT: Vault = {
  seal: () => {
    throw new Error('Codes of a phone are set up through a running server');
  },
  open: () => {
    throw new Error('Codes of a phone are read by a running server');
  },
};
