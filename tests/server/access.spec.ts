import type { Route } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import request from 'supertest';
import type { TestServer } from '../support/server';
import { openTestServer, PIN } from '../support/server';

const routes = Object.entries<Route>(ROUTES);
const open = [
  ...['health', 'openapi', 'signIns', 'signIn', 'setup', 'setUp', 'signInQuestion', 'passkeySignIn'],
  ...['invitationTaken', 'binding', 'bind', 'provider', 'providerBegin', 'providerBack'],
  // A link's own refusal: tests/server/links.spec.ts
  ...['linkBook', 'linkSite', 'linkWork', 'linkPhoto'],
];
const addressOf = ({ path }: Route): string => path.replace(/\{\w+\}/g, 'x-1');

describe('who may come in', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await openTestServer();
  });
  afterAll(() => server.clear());

  const send = ({ method, ...route }: Route) =>
    method === 'GET'
      ? request(server.address).get(addressOf({ method, ...route }))
      : request(server.address)
          .post(addressOf({ method, ...route }))
          .set('idempotency-key', 'k')
          .send({});

  it.each(routes.filter(([name]) => !open.includes(name)))('is nobody unknown, at %s', async (_, route) => {
    const answer = await send(route).expect(401);
    expect(answer.body).toMatchObject({ status: 401, code: 'sign-in-needed' });
    expect(answer.headers['www-authenticate']).toMatch(/^Bearer/);
  });

  it.each(routes.filter(([name]) => !open.includes(name)))(
    'is nobody with a made-up token, at %s',
    async (_, route) => {
      await send(route)
        .set('authorization', `Bearer ${'x'.repeat(43)}`)
        .set('cookie', 'studbook_session=x')
        .expect(401);
    },
  );

  it('is not a lead where a quality manager or an inspector decides', async () => {
    await server.post('/api/holds/h-1/release', { serial: 'T-1' }, { by: 'lead' }).expect(403);
    await server.post('/api/holds/h-1/release', { serial: 'T-1' }, { by: 'inspector' }).expect(404);
  });

  it('signs in by PIN, with a cookie that no script and no other site can use', async () => {
    const answer = await request(server.address)
      .post('/api/sign-in')
      .send({ person: 'lead', pin: PIN })
      .expect(200);

    expect(answer.body.me).toStrictEqual({
      actor: 'lead',
      name: 'Leon',
      roles: ['station-lead'],
      crew: 'electrical',
      stations: [],
    });
    expect(String(answer.headers['set-cookie'])).toMatch(
      /^studbook_session=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict; Expires=/,
    );
  });

  it('ends a session on signing out', async () => {
    const signedIn = await request(server.address).post('/api/sign-in').send({ person: 'lead', pin: PIN });
    const cookie = String(signedIn.headers['set-cookie']).split(';')[0] ?? '';
    await server.get('/api/me', cookie).expect(200);

    const signedOut = await request(server.address).post('/api/sign-out').set('cookie', cookie).expect(200);
    expect(String(signedOut.headers['set-cookie'])).toMatch(/Max-Age=0/);
    await server.get('/api/me', cookie).expect(401);
  });

  it('refuses a wrong PIN without saying whether the person is known, and locks after five', async () => {
    const guess = (person: string) =>
      request(server.address).post('/api/sign-in').send({ person, pin: '0000' });
    const unknown = await guess('nobody').expect(401);
    const wrong = await guess('inspector').expect(401);
    expect(wrong.text).toBe(unknown.text);

    for (let n = 0; n < 4; n += 1) await guess('inspector').expect(401);
    const locked = await guess('inspector').expect(429);
    expect(Number(locked.headers['retry-after'])).toBeGreaterThan(0);
  });

  it('takes a machine by its token, under its own name in the record', async () => {
    const told = await request(server.address)
      .post('/api/lots')
      .set('authorization', `Bearer ${server.token}`)
      .set('idempotency-key', 'gauge-1')
      .send({ lot: 'L-9', kind: 'batt' })
      .expect(201);
    expect(told.body.events).toHaveLength(1);

    const me = await request(server.address)
      .get('/api/me')
      .set('authorization', `Bearer ${server.token}`)
      .expect(200);
    expect(me.body).toMatchObject({
      name: 'tape gauge',
      roles: ['machine'],
      actor: expect.stringMatching(/^token-/),
    });
  });

  it('shows the PINs of a demonstration’s invented people', async () => {
    const { body } = await request(server.address).get('/api/sign-ins').expect(200);
    expect(body.people).toContainEqual({ person: 'lead', name: 'Leon', roles: ['station-lead'], pin: PIN });
  });

  it('writes neither PIN nor token nor session to its log', async () => {
    const cookie = await server.session('lead');
    const log = server.log.join('\n');
    for (const secret of [PIN, server.token, cookie.slice(cookie.indexOf('=') + 1)])
      expect(log).not.toContain(secret);
  });
});

describe('a plant that is no demonstration', () => {
  it('lists who may sign in, and nobody’s PIN', async () => {
    const server = await openTestServer({ demonstration: false });
    const { body } = await request(server.address).get('/api/sign-ins').expect(200);

    expect(body.people).toHaveLength(6);
    expect(body.people.every(({ pin }: { pin: string | null }) => pin === null)).toBe(true);
    await server.clear();
  });
});
