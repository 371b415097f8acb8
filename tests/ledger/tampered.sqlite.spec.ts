import { sqliteHouse } from '../support/ledger-house';
import { RANDOM_EDITS, tamperSuite } from './tamper.suite';

tamperSuite('a SQLite file', () => Promise.resolve(sqliteHouse()), RANDOM_EDITS);
