import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';
import type { KeyStore, RandomBytes } from './key-store';

/** Where a sealed text stands. It opens nowhere else. */
export type SealedPlace = { readonly stream: string; readonly field: string };

/** Keeps personal data out of the log in clear, and lets it be erased from an append-only log by erasing a key. */
export type Sealing = {
  /** `sealed:v1:PERSON:base64url`. Throws PersonForgotten. */
  readonly seal: (person: string, place: SealedPlace, text: string) => string;
  /** Null when the person's key was erased. Throws when the text was moved or altered. */
  readonly unseal: (sealed: string, place: SealedPlace) => string | null;
  readonly forget: (person: string) => void;
  /** Whether a key of theirs is still here. */
  readonly keeps: (person: string) => boolean;
};

/** AES-256-GCM with a random nonce: far below 2^32 texts are ever sealed under one person's key. */
const CIPHER = 'aes-256-gcm';
const NONCE_BYTES = 12;
const TAG_BYTES = 16;
const FORM = /^sealed:v1:([^:]*):([A-Za-z0-9_-]+)$/;

export class SealBroken extends Error {
  constructor(place: SealedPlace, options?: { readonly cause: unknown }) {
    super(
      `The sealed text in ${place.stream}, field ${place.field}, was altered or belongs elsewhere`,
      options,
    );
    this.name = 'SealBroken';
  }
}

export const isSealed = (text: string): boolean => FORM.test(text);

export const sealingWith = (keys: KeyStore, ledger: string, random: RandomBytes = randomBytes): Sealing => ({
  seal: (person, place, text) => {
    const key = keys.keyFor(person);
    const nonce = random(NONCE_BYTES);
    const cipher = createCipheriv(CIPHER, key, nonce).setAAD(bound(ledger, person, place));
    const box = Buffer.concat([nonce, cipher.update(text, 'utf8'), cipher.final(), cipher.getAuthTag()]);
    return `sealed:v1:${encodeURIComponent(person)}:${box.toString('base64url')}`;
  },

  unseal: (sealed, place) => {
    const [, who, text] = FORM.exec(sealed) ?? [];
    if (who === undefined || text === undefined) throw new SealBroken(place);

    const person = decodeURIComponent(who);
    const key = keys.keyIfKept(person);
    return key === undefined ? null : opened(key, Buffer.from(text, 'base64url'), { ledger, person, place });
  },

  keeps: (person) => keys.keyIfKept(person) !== undefined,

  forget: (person) => {
    keys.forget(person);
  },
});

type Binding = { readonly ledger: string; readonly person: string; readonly place: SealedPlace };

const opened = (key: Buffer, box: Buffer, { ledger, person, place }: Binding): string => {
  if (box.length < NONCE_BYTES + TAG_BYTES) throw new SealBroken(place);

  try {
    const decipher = createDecipheriv(CIPHER, key, box.subarray(0, NONCE_BYTES), { authTagLength: TAG_BYTES })
      .setAAD(bound(ledger, person, place))
      .setAuthTag(box.subarray(-TAG_BYTES));
    return decipher.update(box.subarray(NONCE_BYTES, -TAG_BYTES), undefined, 'utf8') + decipher.final('utf8');
  } catch (cause) {
    throw new SealBroken(place, { cause });
  }
};

/** As JSON, no two places can run together into the same text. */
const bound = (ledger: string, person: string, { stream, field }: SealedPlace): Buffer =>
  Buffer.from(JSON.stringify(['sealed:v1', ledger, person, stream, field]));
