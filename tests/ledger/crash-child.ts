import { openLedger } from '@libs/ledger/typeorm';
import type { LedgerOptions } from '@libs/ledger/typeorm';
import { askedOf, put } from '../support/bin';
import { SECRET } from '../support/ledger-house';

/** A writer in a process of its own, to be killed: says each key once it has been answered. */
const CALLERS = 32;

const main = async (at: LedgerOptions['at']): Promise<void> => {
  const ledger = await openLedger({
    at,
    name: 'Test plant',
    clock: () => Date.now(),
    secret: SECRET,
    keepers: [],
  });
  let told = 0;
  const caller = async (): Promise<never> => {
    for (;;) {
      const key = `key-${(told += 1)}`;
      await askedOf(ledger, key, put('a'), put('b'));
      process.stdout.write(`${key}\n`);
    }
  };
  await Promise.all(Array.from({ length: CALLERS }, caller));
};

void main(JSON.parse(process.argv[2] ?? '') as LedgerOptions['at']);
