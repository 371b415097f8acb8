import { openLedger } from '@libs/ledger/typeorm';
import { VIEWS } from '@libs/views';
import { viewKeeper } from '@libs/views/typeorm';
import { callersAsk, perSecond } from './bench';
import { sectionLives, tellingOf } from './section-life';

const SECRET = Buffer.alloc(32, 1);
const START = Date.parse('2026-03-02T13:30:00.000Z');

export type Stored = {
  readonly position: number;
  readonly stream: string;
  readonly version: number;
  readonly body: string;
};

/**
 * Hashed, keyed, kept in the plant's own views and on disk before the caller hears of it. What is recorded is taken
 * as told: the judge's share is in no figure of this row.
 */
export const append = async (
  file: string,
  callers: number,
  size: number,
): Promise<{ rate: number; events: Stored[] }> => {
  let now = START;
  const clock = (): number => (now += 1);
  const lives = sectionLives(size);
  const ledger = await openLedger({
    at: { file },
    name: 'Bench',
    clock,
    secret: SECRET,
    keepers: [],
  });
  const keeper = viewKeeper(ledger, VIEWS);
  await keeper.current();
  const rate = await perSecond(size, async () => {
    await callersAsk(callers, size, async (n) => {
      const happened = lives[n - 1];
      if (happened === undefined) return;
      const outcome = await ledger.ask(tellingOf('0001', n, happened));
      if (!outcome.ok) throw new Error(outcome.rejection.code);
    });
    // Not done before the views say all of it.
    await keeper.current();
  });
  const events = await ledger.reader.query<Stored>('SELECT position, stream, version, body FROM event');
  await keeper.close();
  await ledger.close();
  return { rate, events: [...events] };
};
