import type { AccessNotes } from './access-notes';
import type { AccessRows, SecretRow } from './access-rows';
import type { Known } from './known';
import type { GuessCost } from './secret';
import { secretId } from './secret';

/** What everything about accesses works with. */
export type Doorkeeping = {
  readonly rows: AccessRows;
  /** Milliseconds since 1970, UTC. */
  readonly now: () => number;
  readonly cost: GuessCost;
  readonly notes: AccessNotes;
  readonly cache: Known;
};

/** Ends a session or a token, noted first. */
export const endSecret = async (
  { rows, notes, cache }: Doorkeeping,
  { hash, actor }: SecretRow,
  by: string,
): Promise<void> => {
  await notes.note({ type: 'SessionsEnded', data: { account: actor, sessions: [secretId(hash)] } }, by);
  cache.drop(hash);
  await rows.dropSecret(hash);
};
