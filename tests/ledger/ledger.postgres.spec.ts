import { WriterElsewhere } from '@libs/ledger';
import { askedOf, put } from '../support/bin';
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

const AN_HOUR = 3_600_000;

describe('a ledger held by a living writer', () => {
  it('is not given to another, who is told who holds it', async () => {
    const house = await postgresHouse(server);
    await house.open({ leaseMs: AN_HOUR });

    const refused = await house.open({ leaseMs: 900 }).catch((fault: unknown) => fault);

    expect(refused).toBeInstanceOf(WriterElsewhere);
    expect(refused).toMatchObject({ message: expect.stringContaining(`process ${process.pid}`) });
    await house.clear();
  });

  it('is given to the next one at once when it was closed', async () => {
    const house = await postgresHouse(server);
    const first = await house.open({ leaseMs: AN_HOUR });
    await first.close();

    const second = await house.open({ leaseMs: 900 });

    expect(second.id).toBe(first.id);
    await house.clear();
  });
  it('is held longer with each commit', async () => {
    const house = await postgresHouse(server);
    const ledger = await house.open({ leaseMs: AN_HOUR });
    const heldFor = async (): Promise<boolean> => {
      const [row] = await ledger.reader.query<{ held: boolean }>(
        'SELECT lease_until > clock_timestamp() AS held FROM writer',
      );
      return row?.held ?? false;
    };
    await house.endLease();
    const before = await heldFor();

    await askedOf(ledger, 'key-1', put('a'));

    expect([before, await heldFor()]).toStrictEqual([false, true]);
    await house.clear();
  });
});
