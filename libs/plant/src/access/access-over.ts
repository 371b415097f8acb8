import type { Access } from './access';
import { accessNotes } from './access-notes';
import type { AccessRows } from './access-rows';
import { holding } from './holding';
import { known } from './known';
import type { GuessCost } from './secret';
import { GUESS_COST } from './secret';
import { signingIn } from './signing-in';

export const accessOver = (
  rows: AccessRows,
  now: () => number = Date.now,
  cost: GuessCost = GUESS_COST,
): Access => {
  const notes = accessNotes(rows, now);
  const door = { rows, now, cost, notes, cache: known() };
  return {
    ...signingIn(door),
    ...holding(door),
    notes,
    close: async () => {
      await notes.settle(true);
      await rows.close();
    },
  };
};
