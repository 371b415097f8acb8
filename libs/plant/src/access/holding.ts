import type { Access } from './access';
import type { Holder } from './access-rows';
import type { Doorkeeping } from './doorkeeping';
import { endSecret, endSessionsOf } from './doorkeeping';
import { hashSecret, newSecret, secretId } from './secret';
import { isOver, SEEN_EVERY_MS } from './sessions';

type Holding = Pick<Access, 'makeToken' | 'listed' | 'end' | 'endSessions' | 'withdraw' | 'whoIs'>;

/** Sessions and tokens that are out: who holds them, and how they end. */
export const holding = (door: Doorkeeping): Holding => {
  const { rows, now, notes, cache } = door;

  return {
    makeToken: async ({ role, name, scopes = null }, by) => {
      const token = newSecret('sbk_');
      const hash = hashSecret(token);
      const actor = `token-${secretId(hash)}`;
      await notes.note(
        { type: 'TokenMade', data: { account: actor, role, name, ...(scopes === null ? {} : { scopes }) } },
        by ?? actor,
      );
      await rows.putSecret({
        ...{ hash, kind: 'token', actor, role, name },
        ...{ madeAt: now(), seenAt: now(), expiresAt: null, tablet: null, scopes },
      });
      return { token, actor };
    },
    listed: async (kind) =>
      (await rows.secrets(kind))
        .filter((row) => !isOver(row, now()))
        .map(({ hash, ...row }) => ({ id: secretId(hash), ...row })),
    end: async (id, by) => {
      const all = [...(await rows.secrets('session')), ...(await rows.secrets('token'))];
      const row = all.find(({ hash }) => secretId(hash) === id);
      if (row !== undefined) await endSecret(door, row, by);
      return row !== undefined;
    },
    endSessions: (person, by) => endSessionsOf(door, person, { by }),
    withdraw: async (account, by = account) => {
      await notes.note({ type: 'AccessWithdrawn', data: { account } }, by);
      await rows.dropActor(account);
      cache.clear();
      door.ended();
    },
    whoIs: async (secret) => {
      const hash = hashSecret(secret);
      return cache.get(hash, now()) ?? lookUp(door, hash);
    },
  };
};

const lookUp = async ({ rows, now, cache }: Doorkeeping, hash: string): Promise<Holder | undefined> => {
  const row = await rows.secret(hash);
  const at = now();
  if (row === undefined || isOver(row, at)) return undefined;

  if (at - row.seenAt >= SEEN_EVERY_MS) await rows.seen(hash, at);
  const { kind, actor, role, name, expiresAt, tablet, scopes } = row;
  const holder = { kind, actor, role, name, expiresAt, tablet, scopes };
  cache.put(hash, holder, at);
  return holder;
};
