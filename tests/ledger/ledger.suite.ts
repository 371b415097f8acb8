import { asking, onBin, positionsOf } from '../support/bin';
import type { LedgerHouse } from '../support/ledger-house';

export const ledgerSuite = (engine: string, house: () => LedgerHouse): void => {
  describe(`a ledger on ${engine}`, () => {
    it('records what 64 callers tell it at once, each at a position of its own, without gaps', async () => {
      const ledger = await house().open();
      const told = Array.from({ length: 64 * 10 }, (_, n) => n);
      const outcomes = await Promise.all(
        told.map((n) => ledger.ask(asking(`key-${n}`, onBin(`b${n % 7}`, { type: 'Put', count: 1 })))),
      );
      expect(outcomes.every((outcome) => outcome.ok)).toBe(true);
      const events = await ledger.after(0, 1_000);
      expect(positionsOf(events)).toStrictEqual(told.map((n) => n + 1));
    });
  });
};
