import type { AccessNotes } from './access-notes';
import type { AccessRows, SecretRow } from './access-rows';
import type { Vault } from './factors/vault';
import type { Known } from './known';
import type { OneAtATime } from './one-at-a-time';
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
  readonly vault: Vault;
  /** Guesses wait here for their turn. */
  readonly queue: OneAtATime;
  /** Told when anything that lets someone in has ended: whoever is still listening looks again. */
  readonly ended: () => void;
};

/** Ends a session or a token, noted first. */
export const endSecret = async (
  { rows, notes, cache, ended }: Doorkeeping,
  { hash, actor }: SecretRow,
  by: string,
): Promise<void> => {
  await notes.note({ type: 'SessionsEnded', data: { account: actor, sessions: [secretId(hash)] } }, by);
  cache.drop(hash);
  await rows.dropSecret(hash);
  ended();
};

/** Ends every session of a person but one, noted first where there are any. */
export const endSessionsOf = async (
  door: Doorkeeping,
  person: string,
  { by, but }: { readonly by: string; readonly but?: string | undefined },
): Promise<void> => {
  const own = (await door.rows.secrets('session')).filter(
    ({ actor, hash }) => actor === person && hash !== but,
  );
  if (own.length === 0) return;
  const sessions = own.map(({ hash }) => secretId(hash));
  await door.notes.note({ type: 'SessionsEnded', data: { account: person, sessions } }, by);
  for (const { hash } of own) await door.rows.dropSecret(hash);
  door.cache.clear();
  door.ended();
};
