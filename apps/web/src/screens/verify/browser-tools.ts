import { hashes, verify } from '@noble/ed25519';
import { sha256, sha512 } from '@noble/hashes/sha2.js';
import type { NoteTools } from '@libs/proof';

// The library takes its hash as the proof does: from outside.
hashes.sha512 = sha512;

/**
 * Hashing and signatures by libraries that answer at once: the browser's own make one wait for each of thousands of
 * hashes, and not every browser has Ed25519.
 */
export const BROWSER_TOOLS: NoteTools = {
  sha256,
  verify: (signature, message, publicKey) => {
    try {
      return verify(signature, message, publicKey, { zip215: false });
    } catch {
      // It refuses what is no point of the curve by an error; to a reader that is a wrong signature.
      return false;
    }
  },
};
