import { postgresHouse } from '../support/ledger-house';
import type { LedgerHouse } from '../support/ledger-house';
import { startPostgres } from '../support/postgres';
import type { PostgresServer } from '../support/postgres';
import { ledgerSuite } from './ledger.suite';

let server: PostgresServer;
let house: LedgerHouse;
beforeAll(async () => {
  server = await startPostgres();
});
beforeEach(async () => {
  house = await postgresHouse(server);
});
afterEach(() => house.clear());
afterAll(() => server.stop());

ledgerSuite('PostgreSQL', () => house);
