import { createHash } from 'node:crypto';

/**
 * One hash over a whole ledger: SHA-256 over the leaves (hex, as the history shows them), one a line, in order.
 * It is the demonstration's fingerprint; the proof for an auditor is the signed tree in libs/proof.
 */
export const ledgerRoot = async (leaves: AsyncIterable<string>): Promise<string> => {
  const hash = createHash('sha256');
  for await (const leaf of leaves) hash.update(`${leaf}\n`);
  return hash.digest('hex');
};
