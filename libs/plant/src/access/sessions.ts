import type { SecretRow } from './access-rows';

/** A shift with its overtime: nobody signs in twice a day, nobody stays signed in overnight. */
export const SESSION_MS = 12 * 3_600_000;
/** Longer than any break; whoever has not been seen for this long has gone home. */
export const IDLE_MS = 4 * 3_600_000;
/** How exactly it is known when someone was last seen; less often than they ask, so that asking stays cheap. */
export const SEEN_EVERY_MS = 60_000;

export const sessionFor = (person: string, hash: string, now: number, tablet: string | null): SecretRow => ({
  hash,
  kind: 'session',
  actor: person,
  role: null,
  name: '',
  madeAt: now,
  seenAt: now,
  expiresAt: now + SESSION_MS,
  tablet,
  scopes: null,
});

/** A token lasts until it is withdrawn; a session also ends by itself, and when nobody uses it. */
export const isOver = ({ kind, seenAt, expiresAt }: SecretRow, now: number): boolean =>
  (expiresAt !== null && expiresAt <= now) || (kind === 'session' && now - seenAt >= IDLE_MS);
