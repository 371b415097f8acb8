import request from 'supertest';
import { openTestServer } from '../support/server';
import type { TestServer } from '../support/server';

describe('a server that faces a network', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await openTestServer();
  });
  afterAll(() => server.clear());

  it('gives every answer an id that its log has too', async () => {
    const [one, other] = [await server.get('/api/me'), await server.get('/api/me')];
    expect(one.headers['x-request-id']).toMatch(/^[0-9a-f-]{36}$/);
    expect(other.headers['x-request-id']).not.toBe(one.headers['x-request-id']);
  });

  it('says how it does in the words of Prometheus, to administrators and programs only', async () => {
    await server.get('/metrics').expect(403);
    const { text, headers } = await request(server.address)
      .get('/metrics')
      .set('authorization', `Bearer ${server.token}`)
      .expect(200);
    expect(headers['content-type']).toMatch(/^text\/plain; version=0\.0\.4/);
    expect(text).toMatch(/^studbook_ledger_head \d+$/m);
    expect(text).toMatch(/^studbook_writes 1$/m);
    expect(text).toMatch(/^studbook_request_seconds_bucket\{.*route="\/api\/me".*\} \d+$/m);
    expect(text).not.toContain('lead');
  });

  it('lets nobody try names and PINs faster than a plant signs in', async () => {
    const guess = (n: number) =>
      request(server.address)
        .post('/api/sign-in')
        .send({ person: `nobody-${n}`, pin: '0000' });
    const statuses: number[] = [];
    for (let n = 0; n < 130; n += 1) statuses.push((await guess(n)).status);
    expect(statuses.at(-1)).toBe(429);
    const refused = await guess(131);
    expect(refused.body).toMatchObject({ code: 'too-often', status: 429 });
    expect(Number(refused.headers['retry-after'])).toBeGreaterThan(0);
    await server.get('/api/me').expect(200);
  });
});
