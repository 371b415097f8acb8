import { openLedger } from '@libs/ledger/typeorm';
import { callersAsk, perSecond } from './bench';
import { askingOf, CARD_TABLE, cardKeeper } from './work';

const SECRET = Buffer.alloc(32, 1);
const START = Date.parse('2026-03-02T13:30:00.000Z');

export type Stored = {
  readonly position: number;
  readonly stream: string;
  readonly version: number;
  readonly body: string;
};

/** Decided, hashed, keyed, kept in a view and on disk before the caller hears of it. */
export const append = async (
  file: string,
  callers: number,
  size: number,
): Promise<{ rate: number; events: Stored[] }> => {
  let now = START;
  const clock = (): number => (now += 1);
  const ledger = await openLedger({
    at: { file },
    name: 'Bench',
    clock,
    secret: SECRET,
    keepers: [cardKeeper()],
  });
  await ledger.transaction((sql) => sql.query(CARD_TABLE));
  const rate = await perSecond(size, () =>
    callersAsk(callers, size, async (n) => {
      const outcome = await ledger.ask(askingOf('0001', n));
      if (!outcome.ok) throw new Error(outcome.rejection.code);
    }),
  );
  const events = await ledger.reader.query<Stored>('SELECT position, stream, version, body FROM event');
  await ledger.close();
  return { rate, events: [...events] };
};
