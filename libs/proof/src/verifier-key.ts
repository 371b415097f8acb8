import { base64Of, bytesOfBase64, hexOf, joined, sameBytes, utf8 } from './bytes';
import type { Sha256 } from './hashing';

/** A public Ed25519 key under the name it signs with (C2SP signed-note). */
export type VerifierKey = { readonly name: string; readonly id: Uint8Array; readonly publicKey: Uint8Array };

/** Ed25519 (RFC 8032), injected. */
export type VerifySignature = (signature: Uint8Array, message: Uint8Array, publicKey: Uint8Array) => boolean;

/** What every check of a signed text works with. */
export type NoteTools = { readonly sha256: Sha256; readonly verify: VerifySignature };

const ED25519 = 1;
const KEY_BYTES = 32;
export const KEY_ID_BYTES = 4;

export const verifierKey = (sha256: Sha256, name: string, publicKey: Uint8Array): VerifierKey => ({
  name,
  publicKey,
  id: sha256(joined(utf8(`${name}\n`), Uint8Array.of(ED25519), publicKey)).subarray(0, KEY_ID_BYTES),
});

/** `NAME+ID+KEY`: how a public key is written down and read out. */
export const keyText = ({ name, id, publicKey }: VerifierKey): string =>
  `${name}+${hexOf(id)}+${base64Of(joined(Uint8Array.of(ED25519), publicKey))}`;

/** Undefined where it is no Ed25519 key, or its id is not its own. Base64 may hold a `+` too: only two part the text. */
export const keyFromText = (sha256: Sha256, text: string): VerifierKey | undefined => {
  const [, name, id, encoded] = /^([^+\s]+)\+([0-9a-f]{8})\+(\S+)$/u.exec(text) ?? [];
  if (name === undefined || id === undefined || encoded === undefined) return undefined;

  const typed = bytesOfBase64(encoded);
  if (typed?.length !== KEY_BYTES + 1 || typed[0] !== ED25519) return undefined;
  const key = verifierKey(sha256, name, typed.subarray(1));
  return hexOf(key.id) === id ? key : undefined;
};

export const sameKey = (a: VerifierKey, b: VerifierKey): boolean =>
  a.name === b.name && sameBytes(a.publicKey, b.publicKey);
