import { join } from 'node:path';
import { openSigningKeys } from '@libs/ledger';
import type { Proving } from './plant-proof';

/** The signing key lies beside the keys of sealed data: outside the database, and backed up apart from it. */
export const signingFolder = (keys: string): string => join(keys, 'signing');

export const provingWith = (
  { id, tree, checkpoints }: Omit<Proving, 'keys'> & { readonly id: string },
  keys: string,
): Proving => ({ tree, checkpoints, keys: openSigningKeys(signingFolder(keys), id) });
