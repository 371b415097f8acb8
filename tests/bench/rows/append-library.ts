import { getSQLiteEventStore } from '@event-driven-io/emmett-sqlite';
import { append } from '../append';
import { callersAsk, perSecond } from '../bench';
import type { Row } from '../bench';
import { openRaw } from '../raw-sqlite';
import { scratch } from '../scratch';
import { askingOf, workOf } from '../work';

/** The library is slow enough that a round of more would only take longer. */
const MOST_EVENTS = 400;
/** One caller alone waits for the disk each time. */
const MOST_ALONE = 2_000;

/**
 * The library as its own documents show it, with the same event and the same durability. It opens a connection for
 * each append, and when callers come at once nearly all fail (SQLITE_BUSY); so they wait for each other here, which
 * is the best it can do for any number of them.
 */
const libraryAppend = async (file: string, size: number): Promise<number> => {
  await inWriteAheadMode(file);
  const store = getSQLiteEventStore({ fileName: file, schema: { autoMigration: 'CreateOrUpdate' } });
  const tell = async (n: number): Promise<void> => {
    const { parts, meta } = askingOf('0002', n);
    const event = { type: 'WorkRecorded', data: { ...meta, ...workOf(n) } };
    await untilNotBusy(() => store.appendToStream(parts[0]?.stream ?? '', [event]));
  };
  await tell(0);
  const count = Math.min(size, MOST_EVENTS);
  return perSecond(count, () => callersAsk(1, count, tell));
};

/** The library sets this on each connection without waiting for it; set already, that does the least harm. */
const inWriteAheadMode = async (file: string): Promise<void> => {
  const raw = await openRaw(file);
  await raw.exec('PRAGMA journal_mode = WAL');
  await raw.close();
};

/** Even one caller alone meets it now and then. */
const untilNotBusy = async (append: () => Promise<unknown>): Promise<void> => {
  for (let left = MOST_TRIES; ; left -= 1) {
    try {
      await append();
      return;
    } catch (error) {
      if (left === 0 || !(error instanceof Error) || !error.message.includes('SQLITE_BUSY')) throw error;
    }
  }
};

const MOST_TRIES = 50;

const row = (name: string, callers: number, goal: number): Row => ({
  name,
  unit: 'events/s',
  better: 'more',
  peerName: 'emmett-sqlite',
  goal,
  prepare: (size) => {
    const files = scratch();
    const ours = callers === 1 ? Math.min(size, MOST_ALONE) : size;
    return Promise.resolve({
      ours: async () => (await append(files.file(), callers, ours)).rate,
      peer: () => libraryAppend(files.file(), size),
      close: files.clear,
    });
  },
});

export const appendLibraryRows = [row('append-library-1', 1, 10), row('append-library-64', 64, 50)] as const;
