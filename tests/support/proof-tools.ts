import { createPrivateKey, createPublicKey, hash, sign, verify } from 'node:crypto';
import { treeHashing, verifierKey } from '@libs/proof';
import type { NoteTools, Sha256, Signer } from '@libs/proof';

export const sha256: Sha256 = (bytes) => hash('sha256', bytes, 'buffer');

export const HASHING = treeHashing(sha256);

/** How node:crypto takes a bare Ed25519 key: behind fixed DER prefixes (RFC 8410). */
const PKCS8 = Buffer.from('302e020100300506032b657004220420', 'hex');
const SPKI = Buffer.from('302a300506032b6570032100', 'hex');

export const TOOLS: NoteTools = {
  sha256,
  verify: (signature, message, publicKey) =>
    verify(
      null,
      message,
      createPublicKey({ key: Buffer.concat([SPKI, publicKey]), format: 'der', type: 'spki' }),
      signature,
    ),
};

export const signerFrom = (name: string, secret: Uint8Array): Signer => {
  const privateKey = createPrivateKey({ key: Buffer.concat([PKCS8, secret]), format: 'der', type: 'pkcs8' });
  const spki = createPublicKey(privateKey).export({ format: 'der', type: 'spki' });
  return {
    key: verifierKey(sha256, name, new Uint8Array(spki.subarray(SPKI.length))),
    sign: (message) => sign(null, message, privateKey),
  };
};

export const fromHex = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'hex'));
