import { VIEWS } from '@libs/views';
import { rebuild } from '@libs/views/typeorm';
import { openLedger } from '@libs/ledger/typeorm';
import type { OpenLedger } from '@libs/ledger/typeorm';
import { Database } from 'sqlite3';
import type { Contest, Row } from '../bench';
import { SECRET, START, record } from '../recorded-log';
import { scratch } from '../scratch';

/** Rows the bare driver is asked for at once: more stall everything else that a process does. */
const PAGE = 2_000;

const milliseconds = async (work: () => Promise<void>): Promise<number> => {
  const began = performance.now();
  await work();
  return performance.now() - began;
};

/** Every event read and parsed by the driver itself, page by page, and nothing made of it. */
const readAndParse = async (database: Database): Promise<void> => {
  let position = 0;
  for (;;) {
    const rows = await page(database, position);
    for (const { body } of rows) position = (JSON.parse(body) as { position: number }).position;
    if (rows.length < PAGE) return;
  }
};

const page = (database: Database, position: number): Promise<readonly { readonly body: string }[]> =>
  new Promise((done, fail) => {
    database.all<{ body: string }>(
      'SELECT body FROM event WHERE position > ? ORDER BY position LIMIT ?',
      [position, PAGE],
      (error: Error | null, rows) => {
        if (error === null) done(rows);
        else fail(error);
      },
    );
  });

const prepare = async (size: number): Promise<Contest> => {
  const files = scratch();
  const file = files.file();
  await record(file, size);
  let now = START;
  const ledger: OpenLedger = await openLedger({
    at: { file },
    name: 'Bench',
    clock: () => (now += 1),
    secret: SECRET,
    keepers: [],
  });
  const database = new Database(file);
  return {
    ours: () => milliseconds(() => rebuild(ledger, VIEWS, () => undefined)),
    peer: () => milliseconds(() => readAndParse(database)),
    close: async () => {
      await new Promise<void>((done) => {
        database.close(() => {
          done();
        });
      });
      await ledger.close();
      await files.clear();
    },
  };
};

/** All views from the log anew: read, parsed, reduced and written, beside reading and parsing alone. */
export const rebuildRow: Row = {
  name: 'rebuild',
  unit: 'ms',
  better: 'less',
  peerName: 'bare sqlite3, read and parse',
  goal: 3,
  prepare,
};
