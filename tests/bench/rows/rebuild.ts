import { VIEWS } from '@libs/views';
import { rebuild } from '@libs/views/typeorm';
import { openLedger } from '@libs/ledger/typeorm';
import type { OpenLedger } from '@libs/ledger/typeorm';
import { Database } from 'sqlite3';
import { callersAsk } from '../bench';
import type { Contest, Row } from '../bench';
import { scratch } from '../scratch';
import { sectionLives, tellingOf } from '../section-life';

const SECRET = Buffer.alloc(32, 1);
const START = Date.parse('2026-03-02T13:30:00.000Z');
/** Rows the bare driver is asked for at once: more stall everything else that a process does. */
const PAGE = 2_000;

/** A log of whole sections' lives, one after the other as they are recorded, with no view kept. */
const record = async (file: string, size: number): Promise<void> => {
  let now = START;
  const ledger = await openLedger({
    at: { file },
    name: 'Bench',
    clock: () => (now += 1),
    secret: SECRET,
    keepers: [],
  });
  const events = sectionLives(size);
  await callersAsk(256, events.length, async (n) => {
    const happened = events[n - 1];
    if (happened === undefined) return;
    const outcome = await ledger.ask(tellingOf('0001', n, happened));
    if (!outcome.ok) throw new Error(outcome.rejection.code);
  });
  await ledger.close();
};

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
