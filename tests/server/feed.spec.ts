import request from 'supertest';
import { openReceiver } from '../support/receiver';
import type { Receiver } from '../support/receiver';
import { openTestServer } from '../support/server';
import type { TestServer } from '../support/server';

const WANTS = { events: [], alarms: true, checkpoints: false, clocks: false };

describe('the feed over HTTP', () => {
  let server: TestServer;
  let receiver: Receiver;
  beforeAll(async () => {
    receiver = await openReceiver();
    server = await openTestServer({ feedNetworks: ['127.0.0.0/8'] });
  }, 60_000);
  afterAll(async () => {
    await server.clear();
    await receiver.close();
  });
  const post = async (path: string, body: object, by: string) =>
    request(server.address)
      .post(path)
      .set('cookie', await server.session(by))
      .send(body);

  it('sends what is told to whoever the administrator subscribed, by itself', async () => {
    const wants = { ...WANTS, events: 'all' };
    const made = await post(
      '/api/feed/subscriptions',
      { kind: 'url', target: receiver.url, wants },
      'administrator',
    );
    expect(made.status).toBe(201);
    expect(made.body.secret).toMatch(/^whsec_/);

    const arrived = new Promise<void>((resolve) =>
      receiver.answer((_received, answer) => {
        answer.writeHead(204).end();
        resolve();
      }),
    );
    await server.post('/api/lots', { lot: 'B-90', kind: 'batt' }, { by: 'manager' }).expect(201);
    await arrived;
    expect(receiver.received[0]?.event).toMatchObject({
      type: 'studbook.record.LotReceived.v1',
      subject: 'B-90',
    });

    const { body } = await server.get('/api/feed', await server.session('administrator')).expect(200);
    expect(body.subscriptions).toMatchObject([
      { id: made.body.subscription, by: 'Adah', target: receiver.url },
    ]);
    expect(JSON.stringify(body)).not.toContain('whsec_');
  });

  it('sends a test when asked, and says how it went', async () => {
    const { body } = await server.get('/api/feed', await server.session('administrator'));
    const { id } = body.subscriptions[0];
    const tried = await post(`/api/feed/subscriptions/${id}/test`, {}, 'administrator');
    expect([tried.status, tried.body]).toStrictEqual([200, { delivered: true, why: null }]);
    expect(receiver.received.at(-1)?.event).toMatchObject({ type: 'studbook.test.v1' });
  });

  it('lets a quality manager have alarms sent, and nothing of the record', async () => {
    const alarms = await post(
      '/api/feed/subscriptions',
      { kind: 'url', target: receiver.url, wants: WANTS },
      'manager',
    );
    expect(alarms.status).toBe(201);
    const wants = { ...WANTS, events: ['WorkRecorded'] };
    const events = await post(
      '/api/feed/subscriptions',
      { kind: 'url', target: receiver.url, wants },
      'manager',
    );
    expect([events.status, events.body.code]).toStrictEqual([403, 'role-missing']);
    const lead = await post(
      '/api/feed/subscriptions',
      { kind: 'url', target: receiver.url, wants: WANTS },
      'lead',
    );
    expect(lead.status).toBe(403);
  });

  it('names what is wrong with an address, and makes nothing', async () => {
    const before = await server.get('/api/feed', await server.session('administrator'));
    for (const [target, code] of [
      ['https://10.0.0.8/x', 'feed-own-network'],
      ['http://receiver.example/x', 'feed-tls-needed'],
      ['nowhere', 'feed-not-a-web-address'],
    ]) {
      const made = await post(
        '/api/feed/subscriptions',
        { kind: 'url', target, wants: WANTS },
        'administrator',
      );
      expect([made.status, made.body.code, made.body.errors[0].pointer]).toStrictEqual([
        422,
        code,
        '#/target',
      ]);
    }
    const empty = { ...WANTS, alarms: false };
    const made = await post(
      '/api/feed/subscriptions',
      { kind: 'url', target: receiver.url, wants: empty },
      'administrator',
    );
    expect([made.status, made.body.errors[0].pointer]).toStrictEqual([400, '#/wants']);
    const after = await server.get('/api/feed', await server.session('administrator'));
    expect(after.body.subscriptions).toHaveLength(before.body.subscriptions.length);
  });

  it('leaves in the ledger of accesses who sent what where, and when it ended, without the address itself', async () => {
    const { body } = await server.get('/api/feed', await server.session('administrator'));
    const { id } = body.subscriptions[0];
    expect((await post(`/api/feed/subscriptions/${id}/end`, {}, 'administrator')).status).toBe(200);
    const log = await server.get('/api/accesses', await server.session('auditor')).expect(200);
    const feed = log.body.accesses.filter(({ type }: { readonly type: string }) => type.startsWith('Feed'));
    expect(feed).toMatchObject([
      { type: 'FeedEnded', by: 'Adah', data: { subscription: id } },
      { type: 'FeedSubscribed', by: 'Mara', data: { wants: ['alarms'] } },
      { type: 'FeedSubscribed', by: 'Adah', data: { subscription: id, wants: ['all', 'alarms'] } },
    ]);
    expect(JSON.stringify(feed)).not.toContain('/news');
  });
});
