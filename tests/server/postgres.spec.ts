import { startPostgres } from '../support/postgres';
import type { PostgresServer } from '../support/postgres';
import { openReceiver } from '../support/receiver';
import type { Receiver } from '../support/receiver';
import { openTestServer } from '../support/server';
import type { TestServer } from '../support/server';

describe('a plant kept in PostgreSQL', () => {
  let postgres: PostgresServer;
  let server: TestServer;
  let receiver: Receiver;
  beforeAll(async () => {
    postgres = await startPostgres();
    receiver = await openReceiver();
    server = await openTestServer({
      databaseUrl: await postgres.newDatabase(),
      feedNetworks: ['127.0.0.0/8'],
    });
  }, 60_000);
  afterAll(async () => {
    await server.clear();
    await receiver.close();
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

  it('sends its news out, and forgets a subscriber that is ended', async () => {
    const by = 'administrator';
    const wants = { events: ['LotReceived'], alarms: true, checkpoints: true, clocks: true };
    const made = await server.post(
      '/api/feed/subscriptions',
      { kind: 'url', target: receiver.url, wants },
      { by },
    );
    const arrived = new Promise<void>((resolve) =>
      receiver.answer((_received, answer) => {
        answer.writeHead(204).end();
        resolve();
      }),
    );
    await server.post('/api/lots', { lot: 'L-2', kind: 'batt' }, { by: 'manager' }).expect(201);
    await arrived;
    expect(receiver.received[0]?.event).toMatchObject({
      type: 'studbook.record.LotReceived.v1',
      subject: 'L-2',
    });

    const { subscription } = made.body;
    await server.post(`/api/feed/subscriptions/${subscription}/end`, {}, { by }).expect(200);
    const { body } = await server.get('/api/feed', await server.session(by)).expect(200);
    expect(body).toStrictEqual({ hasMail: false, subscriptions: [], letters: [] });
  });
});
