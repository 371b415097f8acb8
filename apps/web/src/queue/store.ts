import { openDB } from 'idb';
import type { DBSchema, IDBPDatabase } from 'idb';
import type { Differing, Unsent } from './entry';

/** What this device keeps for the floor: entries not sent, what became of some of them, and facts to work on without a network. */
type Floor = DBSchema & {
  queue: { key: string; value: Unsent };
  differing: { key: string; value: Differing };
  facts: { key: string; value: unknown };
};
export type FloorStore = IDBPDatabase<Floor>;

const DATABASE = 'studbook-floor';
let opening: Promise<FloorStore> | null = null;

export const floorStore = (): Promise<FloorStore> => {
  opening ??= openDB<Floor>(DATABASE, 1, {
    upgrade: (database) => {
      database.createObjectStore('queue', { keyPath: 'key' });
      database.createObjectStore('differing', { keyPath: 'key' });
      database.createObjectStore('facts');
    },
    // The browser threw the connection out (it does so to save memory): the next one asks anew.
    terminated: () => {
      opening = null;
    },
  });
  return opening;
};

/** On the disk before it is said to be kept: a battery that dies a moment later takes nothing along. */
export const putEntry = async (entry: Unsent): Promise<void> => {
  const transaction = (await floorStore()).transaction('queue', 'readwrite', { durability: 'strict' });
  await Promise.all([transaction.store.put(entry), transaction.done]);
};

/** The only writer of a name is the one that reads it, so what is kept has its reader's own type. */
export const keptFact = async <F>(name: string): Promise<F | undefined> =>
  (await (await floorStore()).get('facts', name)) as F | undefined;
export const keepFact = async (name: string, fact: unknown): Promise<void> => {
  await (await floorStore()).put('facts', fact, name);
};
export const dropFact = async (name: string): Promise<void> => {
  await (await floorStore()).delete('facts', name);
};

/** No room is left, or the browser lets this page keep nothing (a private window). Anything else is a mistake of ours. */
export const isFull = (fault: unknown): boolean =>
  fault instanceof DOMException &&
  ['QuotaExceededError', 'UnknownError', 'InvalidStateError', 'AbortError'].includes(fault.name);
