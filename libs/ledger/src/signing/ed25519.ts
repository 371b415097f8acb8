import { createPrivateKey, createPublicKey, hash, sign, verify } from 'node:crypto';
import type { KeyObject } from 'node:crypto';
import { verifierKey } from '@libs/proof';
import type { NoteTools, Sha256, Signer } from '@libs/proof';

export const sha256: Sha256 = (bytes) => hash('sha256', bytes, 'buffer');

/** node:crypto takes a bare key only inside DER: these are the fixed bytes in front of it (RFC 8410). */
const PRIVATE_PREFIX = Buffer.from('302e020100300506032b657004220420', 'hex');
const PUBLIC_PREFIX = Buffer.from('302a300506032b6570032100', 'hex');

const publicKeyOf = (key: Uint8Array): KeyObject =>
  createPublicKey({ key: Buffer.concat([PUBLIC_PREFIX, key]), format: 'der', type: 'spki' });

/** Hashing and checking signatures, as the server and the command line have them. */
export const NOTE_TOOLS: NoteTools = {
  sha256,
  verify: (signature, message, publicKey) => verify(null, message, publicKeyOf(publicKey), signature),
};

/** Signs under this name with the key of these 32 bytes. */
export const signerOf = (name: string, secret: Uint8Array): Signer => {
  const key = createPrivateKey({
    key: Buffer.concat([PRIVATE_PREFIX, secret]),
    format: 'der',
    type: 'pkcs8',
  });
  const spki = createPublicKey(key).export({ format: 'der', type: 'spki' });
  return {
    key: verifierKey(sha256, name, new Uint8Array(spki.subarray(PUBLIC_PREFIX.length))),
    sign: (message) => sign(null, message, key),
  };
};
