import { postgresHouse } from '../support/ledger-house';
import { startPostgres } from '../support/postgres';
import type { PostgresServer } from '../support/postgres';
import { keepingSuite } from './keeping.suite';

let server: PostgresServer;
beforeAll(async () => {
  server = await startPostgres();
});
afterAll(() => server.stop());

keepingSuite('PostgreSQL', () => postgresHouse(server), 12);
