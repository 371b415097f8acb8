import { base64Of, bytesOfBase64, joined, sameBytes, utf8 } from './bytes';
import { KEY_ID_BYTES } from './verifier-key';
import type { NoteTools, VerifierKey } from './verifier-key';

/** A text and who signed it, in the open form of C2SP signed-note. */
export type SignedNote = { readonly text: string; readonly signatures: readonly NoteSignature[] };

export type NoteSignature = {
  readonly name: string;
  readonly keyId: Uint8Array;
  readonly signature: Uint8Array;
};

/** Whoever signs: the key's name and id, and Ed25519 over the text. */
export type Signer = {
  readonly key: VerifierKey;
  readonly sign: (message: Uint8Array) => Uint8Array;
};

/** More signatures than anyone needs; beyond it somebody wants to keep the reader busy. */
const SIGNATURES_LIMIT = 32;
const ED25519_SIGNATURE_BYTES = 64;

/** `text` ends in a newline. */
export const signedNote = (text: string, signers: readonly Signer[]): string => {
  const lines = signers.map(({ key, sign }) => {
    const signature = joined(key.id, sign(utf8(text)));
    return `\u2014 ${key.name} ${base64Of(signature)}\n`;
  });
  return `${text}\n${lines.join('')}`;
};

/** Undefined where it does not have the form to the letter. */
export const readNote = (note: string): SignedNote | undefined => {
  const cut = note.lastIndexOf('\n\n');
  if (cut < 0 || !note.endsWith('\n') || hasControlCharacter(note)) return undefined;

  const lines = note.slice(cut + 2, -1).split('\n');
  if (lines.length > SIGNATURES_LIMIT) return undefined;
  const signatures = lines.flatMap((line) => readSignature(line) ?? []);
  return signatures.length === lines.length ? { text: note.slice(0, cut + 1), signatures } : undefined;
};

/** Newline is the only one a note may hold. */
const hasControlCharacter = (text: string): boolean => {
  for (let n = 0; n < text.length; n += 1) {
    const code = text.charCodeAt(n);
    if (code < 0x20 && code !== 0x0a) return true;
  }
  return false;
};

const readSignature = (line: string): NoteSignature | undefined => {
  const [, name, encoded] = /^\u2014 ([^+\s]+) (\S+)$/u.exec(line) ?? [];
  const bytes = encoded === undefined ? undefined : bytesOfBase64(encoded);
  if (name === undefined || bytes === undefined || bytes.length <= KEY_ID_BYTES) return undefined;
  return { name, keyId: bytes.subarray(0, KEY_ID_BYTES), signature: bytes.subarray(KEY_ID_BYTES) };
};

/** Signed: at least once by this key. A wrong signature under it refuses the note; those of others say nothing. */
export type Signing = 'signed' | 'not-by-this-key' | 'wrong';

export const signingBy = (note: SignedNote, key: VerifierKey, { verify }: NoteTools): Signing => {
  const own = note.signatures.filter(({ name, keyId }) => name === key.name && sameBytes(keyId, key.id));
  if (own.length === 0) return 'not-by-this-key';

  const message = utf8(note.text);
  const good = own.every(
    ({ signature }) =>
      signature.length === ED25519_SIGNATURE_BYTES && verify(signature, message, key.publicKey),
  );
  return good ? 'signed' : 'wrong';
};
