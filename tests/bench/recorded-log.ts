import { openLedger } from '@libs/ledger/typeorm';
import { callersAsk } from './bench';
import { sectionLives, tellingOf } from './section-life';

export const SECRET = Buffer.alloc(32, 1);
export const START = Date.parse('2026-03-02T13:30:00.000Z');

/** A log of whole sections' lives, one after the other as they are recorded, with no view kept. */
export const record = async (file: string, size: number): Promise<void> => {
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
