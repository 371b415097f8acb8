import { sqliteHouse } from '../support/ledger-house';
import { keepingSuite } from './keeping.suite';

keepingSuite('a SQLite file', () => Promise.resolve(sqliteHouse()), 60);
