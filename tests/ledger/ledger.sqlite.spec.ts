import { sqliteHouse } from '../support/ledger-house';
import { ledgerSuite } from './ledger.suite';

ledgerSuite({ name: 'a SQLite file', newHouse: () => Promise.resolve(sqliteHouse()), runs: 40 });
