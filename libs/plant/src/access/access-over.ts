import type { Access } from './access';
import { accessNotes } from './access-notes';
import type { AccessRows } from './access-rows';
import type { Doorkeeping } from './doorkeeping';
import { ownFactors } from './factors/own-factors';
import { passkeys } from './factors/passkeys';
import { NO_VAULT } from './factors/vault';
import type { Vault } from './factors/vault';
import { holding } from './holding';
import { known } from './known';
import { links } from './links';
import { oneAtATime } from './one-at-a-time';
import type { GuessCost } from './secret';
import { GUESS_COST } from './secret';
import { signingIn } from './signing-in';
import { tablets } from './tablets/tablets';

/** More sign-ins waiting than a plant has tablets is not people. */
const SIGN_INS_WAITING = 50;

export const accessOver = (
  rows: AccessRows,
  now: () => number = Date.now,
  cost: GuessCost = GUESS_COST,
  vault: Vault = NO_VAULT,
): Access => {
  const notes = accessNotes(rows, now);
  const listeners = new Set<() => void>();
  const door: Doorkeeping = {
    ...{ rows, now, cost, notes, vault, cache: known(), queue: oneAtATime(SIGN_INS_WAITING) },
    ended: () => {
      for (const listener of [...listeners]) listener();
    },
  };
  return {
    ...signingIn(door),
    ...holding(door),
    ...ownFactors(door),
    ...passkeys(door),
    ...tablets(door),
    ...links(door),
    onEnded: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    notes,
    close: async () => {
      await notes.settle(true);
      await rows.close();
    },
  };
};
