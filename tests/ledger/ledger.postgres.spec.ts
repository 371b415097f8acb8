import { WriterElsewhere } from '@libs/ledger';
import { postgresHouse } from '../support/ledger-house';
import { startPostgres } from '../support/postgres';
import type { PostgresServer } from '../support/postgres';
import { ledgerSuite } from './ledger.suite';

let server: PostgresServer;
beforeAll(async () => {
  server = await startPostgres();
});
afterAll(() => server.stop());

ledgerSuite({ name: 'PostgreSQL', newHouse: () => postgresHouse(server), runs: 10 });

describe('a ledger held by a living writer', () => {
  it('is not given to another, who is told who holds it', async () => {
    const house = await postgresHouse(server);
    await house.open({ leaseMs: 900 });

    const refused = await house.open({ leaseMs: 900 }).catch((fault: unknown) => fault);

    expect(refused).toBeInstanceOf(WriterElsewhere);
    expect(refused).toMatchObject({ message: expect.stringContaining(`process ${process.pid}`) });
    await house.clear();
  });

  it('is given to the next one at once when it was closed', async () => {
    const house = await postgresHouse(server);
    const first = await house.open({ leaseMs: 3_600_000 });
    await first.close();

    const second = await house.open({ leaseMs: 900 });

    expect(second.id).toBe(first.id);
    await house.clear();
  });
});
