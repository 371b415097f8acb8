import { postgresHouse } from '../support/ledger-house';
import { startPostgres } from '../support/postgres';
import type { PostgresServer } from '../support/postgres';
import { RANDOM_EDITS, tamperSuite } from './tamper.suite';

let server: PostgresServer;
beforeAll(async () => {
  server = await startPostgres();
});
afterAll(() => server.stop());

tamperSuite('PostgreSQL', () => postgresHouse(server), RANDOM_EDITS);
