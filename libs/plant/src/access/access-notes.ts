import { randomUUID } from 'node:crypto';
import type { AccountEvent } from '@libs/record';
import type { AccessRows } from './access-rows';

/** What is on its way into the ledger of accesses. `by`: who did it, where it is not the account itself. */
export type AccessNote = { readonly at: string; readonly by: string; readonly event: AccountEvent };

/** Notes down what happens to accesses, before it takes effect: nothing that lets someone in goes unrecorded. */
export type AccessNotes = {
  readonly note: (event: AccountEvent, by?: string) => Promise<void>;
  /** A wrong PIN or password. Counted, and noted together a while later. */
  readonly signInRefused: (account: string) => void;
  /** Somebody signed in asked for what they may not have. Counted, and noted together a while later. */
  readonly entryRefused: (account: string, route: string) => void;
  /** Notes the counts whose time has come; all of them where `whole`. */
  readonly settle: (whole?: boolean) => Promise<void>;
};

/** Refusals within this long become one event. */
export const COUNTED_TOGETHER_MS = 60_000;
/** Made-up routes and accounts are at most this many counts; what is beyond them is counted as one. */
const COUNTS = 500;
const OTHERS = 'others';

type Count = { readonly event: (count: number, until: string) => AccountEvent; readonly by: string };
type Counted = Count & { count: number; readonly since: number; until: number };

export const accessNotes = (rows: AccessRows, now: () => number): AccessNotes => {
  const counts = new Map<string, Counted>();

  const note: AccessNotes['note'] = (event, by = event.data.account) => {
    const noted: AccessNote = { at: isoOf(now()), by, event };
    return rows.note({ key: randomUUID(), note: JSON.stringify(noted) });
  };
  const count = (name: string, made: Count): void => {
    const at = now();
    const known = counts.get(name);
    if (known === undefined) counts.set(name, { ...made, count: 1, since: at, until: at });
    else {
      known.count += 1;
      known.until = at;
    }
  };
  const nameFor = (name: string): string => (counts.size < COUNTS || counts.has(name) ? name : OTHERS);

  return {
    note,
    signInRefused: (wanted) => {
      const account = nameFor(wanted);
      count(account, {
        by: account,
        event: (refusals, until) => ({ type: 'SignInsRefused', data: { account, count: refusals, until } }),
      });
    },
    entryRefused: (account, wanted) => {
      const name = nameFor(`${account} ${wanted}`);
      const route = name === OTHERS ? OTHERS : wanted;
      count(name, {
        by: account,
        event: (refusals, until) => ({
          type: 'EntriesRefused',
          data: { account, route, count: refusals, until },
        }),
      });
    },
    settle: async (whole = false) => {
      for (const [name, { since, until, count: refusals, event, by }] of [...counts]) {
        if (!whole && now() - since < COUNTED_TOGETHER_MS) continue;
        counts.delete(name);
        await note(event(refusals, isoOf(until)), by);
      }
    },
  };
};

const isoOf = (ms: number): string => new Date(ms).toISOString();
