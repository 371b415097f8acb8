import type { Access, SignIn } from './access';
import type { Doorkeeping } from './doorkeeping';
import { endSecret } from './doorkeeping';
import { prove } from './factors/proving';
import type { NotProven, Proven } from './factors/proving';
import { hashGuessable, hashSecret, newSecret, secretId } from './secret';
import { SESSION_MS, sessionFor } from './sessions';

const BUSY_MS = 5_000;
const BUSY: NotProven = { ok: false, why: 'too-many', retryAfterMs: BUSY_MS };

type SigningIn = Pick<Access, 'addPerson' | 'offers' | 'signIn' | 'prove' | 'signOut' | 'letIn'>;

export const signingIn = (door: Doorkeeping): SigningIn => {
  const { rows, cost, notes, cache, queue } = door;
  const lookAt: Access['prove'] = (person, shown, step) =>
    queue<Proven>(() => prove(door, person, shown, step)) ?? Promise.resolve(BUSY);

  return {
    addPerson: async (person, pin, { shown = false, by = person } = {}) => {
      const hash = await hashGuessable(pin, cost);
      await notes.note({ type: 'AccessGiven', data: { account: person, means: 'pin' } }, by);
      await rows.putPin({ person, hash, shown: shown ? pin : null });
    },
    offers: async () => (await rows.pins()).map(({ person, shown }) => ({ person, shown })),
    prove: lookAt,
    signIn: async (person, shown, step, replaces) => {
      const proven = await lookAt(person, shown, step);
      return proven.ok ? letIn(door, person, proven.means, { tablet: step.tablet, replaces }) : proven;
    },
    signOut: async (session) => {
      const row = await rows.secret(hashSecret(session));
      if (row === undefined) return;
      await notes.note({ type: 'SignedOut', data: { account: row.actor, session: secretId(row.hash) } });
      cache.drop(row.hash);
      await rows.dropSecret(row.hash);
      door.ended();
    },
    letIn: (person, means, more) => letIn(door, person, means, more),
  };
};

/** A new session, whatever was there before on the same device; that one ends. */
const letIn = async (
  door: Doorkeeping,
  person: string,
  means: Parameters<Access['letIn']>[1],
  { tablet = null, replaces }: NonNullable<Parameters<Access['letIn']>[2]> = {},
): Promise<SignIn & { readonly ok: true }> => {
  const { rows, now, notes } = door;
  const before = replaces === undefined ? undefined : await rows.secret(hashSecret(replaces));
  if (before?.kind === 'session') await endSecret(door, before, person);

  const session = newSecret('');
  const hash = hashSecret(session);
  await notes.note({
    type: 'SignedIn',
    data: {
      ...{ account: person, means, session: secretId(hash) },
      ...(tablet === null ? {} : { tablet }),
    },
  });
  await rows.dropExpired(now());
  await rows.putSecret(sessionFor(person, hash, now(), tablet));
  return { ok: true, session, expiresAt: now() + SESSION_MS };
};
