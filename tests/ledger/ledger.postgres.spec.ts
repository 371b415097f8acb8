import { WriterElsewhere } from '@libs/ledger';
import type { Keeper } from '@libs/ledger';
import { askedOf, bin, put } from '../support/bin';
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

describe('a session that ends in the middle of a commit', () => {
  const ENDS_ITSELF = 'SELECT pg_terminate_backend(pg_backend_pid())';

  it('leaves nothing when it ends before, tells the caller to send again, and a new session takes that', async () => {
    const house = await postgresHouse(server);
    let left = 1;
    const keeper: Keeper = {
      name: 'ends the session once',
      keep: async (_events, sql) => {
        if ((left -= 1) >= 0) await sql.query(ENDS_ITSELF);
      },
      dropped: () => undefined,
    };
    const ledger = await house.open({ keepers: [keeper] });

    const cut = await askedOf(ledger, 'key-1', put('a', 5)).catch((fault: unknown) => fault);
    const again = await askedOf(ledger, 'key-1', put('a', 5));

    expect(cut).toMatchObject({ name: 'CommitFailed', remedy: 'send-again' });
    expect(again).toMatchObject({ ok: true, repeated: false, events: [{ position: 1 }] });
    await house.clear();
  });

  it('says that nobody knows when it ends at the commit itself, and the same key then tells', async () => {
    const house = await postgresHouse(server);
    const ledger = await house.open();
    await askedOf(ledger, 'key-1', put('a', 5));
    await house.tamper(`
      CREATE FUNCTION end_session() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN PERFORM pg_terminate_backend(pg_backend_pid()); RETURN NULL; END $$;
      CREATE CONSTRAINT TRIGGER ends_session AFTER INSERT ON event DEFERRABLE INITIALLY DEFERRED
        FOR EACH ROW EXECUTE FUNCTION end_session()`);

    const cut = await askedOf(ledger, 'key-2', put('a', 5)).catch((fault: unknown) => fault);
    await house.tamper('DROP TRIGGER ends_session ON event');
    const again = await askedOf(ledger, 'key-2', put('a', 5));

    expect(cut).toMatchObject({ name: 'CommitFailed', remedy: 'send-again-to-learn' });
    expect(again).toMatchObject({ ok: true, repeated: false, events: [{ position: 2, version: 2 }] });
    expect(await ledger.state(bin, 'a')).toBe(10);
    await house.clear();
  });
});
