import { sqliteHouse } from '../support/ledger-house';
import type { LedgerHouse } from '../support/ledger-house';
import { ledgerSuite } from './ledger.suite';

let house: LedgerHouse;
beforeEach(() => {
  house = sqliteHouse();
});
afterEach(() => house.clear());

ledgerSuite('a SQLite file', () => house);
