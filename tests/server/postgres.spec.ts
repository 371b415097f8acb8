import { startPostgres } from '../support/postgres';
import type { PostgresServer } from '../support/postgres';
import { openTestServer } from '../support/server';
import type { TestServer } from '../support/server';

describe('a plant kept in PostgreSQL', () => {
  let postgres: PostgresServer;
  let server: TestServer;
  beforeAll(async () => {
    postgres = await startPostgres();
    server = await openTestServer({ databaseUrl: await postgres.newDatabase() });
  }, 60_000);
  afterAll(async () => {
    await server.clear();
    await postgres.stop();
  });
  const receive = () => server.post('/api/lots', { lot: 'L-1', kind: 'batt' }, { key: 'once' });

  it('answers as one on SQLite does, sign-ins and repeated keys included', async () => {
    const { body: health } = await server.get('/api/health').expect(200);
    expect(health).toMatchObject({ status: 'ready', engine: 'postgres' });

    const first = await receive().expect(201);
    const again = await receive().expect(201);
    expect(again.body).toStrictEqual({ ...first.body, repeated: true });
    await server.get('/api/me', await server.session('lead')).expect(200);
  });

  it('knows all of it after the server was stopped and started, open sessions too', async () => {
    const head = await server.head();
    await server.stop();
    await server.again();

    expect(await server.head()).toBe(head);
    expect((await receive().expect(201)).body.repeated).toBe(true);
  });
});
