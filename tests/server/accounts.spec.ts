import request from 'supertest';
import { openTestServer, PIN } from '../support/server';
import type { TestServer } from '../support/server';

type Access = { readonly type: string; readonly account: string; readonly by: string; readonly data: object };

describe('people and what lets them in', () => {
  let server: TestServer;
  beforeEach(async () => {
    server = await openTestServer();
  });
  afterEach(() => server.clear());

  const admin = async () => server.session('administrator');
  const by = 'administrator';
  const signIn = (person: string, pin: string) =>
    request(server.address).post('/api/sign-in').send({ person, pin });
  const cookieOf = (answer: { readonly headers: { readonly [name: string]: unknown } }): string =>
    String(answer.headers['set-cookie']).split(';')[0] ?? '';
  const accesses = async (): Promise<readonly Access[]> =>
    (await server.get('/api/accesses', await admin()).expect(200)).body.accesses;

  const enroll = async (roles: readonly string[] = ['station-lead']) =>
    (
      await server
        .post('/api/people', { name: 'Bo', roles, crew: 'electrical', stations: ['rough-in'] }, { by })
        .expect(201)
    ).body;

  it('are enrolled by an administrator, and sign in with the PIN shown once', async () => {
    const { person, pin } = await enroll();
    expect(pin).toMatch(/^\d{6}$/);

    const { body } = await signIn(person, pin).expect(200);
    expect(body.me).toMatchObject({ name: 'Bo', roles: ['station-lead'], stations: ['rough-in'] });
    expect((await accesses()).slice(0, 2)).toMatchObject([
      { type: 'SignedIn', account: 'Bo', data: { means: 'pin' } },
      { type: 'AccessGiven', account: 'Bo', by: 'Adah' },
    ]);
  });

  it('are enrolled once, however often the same request arrives', async () => {
    const body = { name: 'Bo', roles: ['auditor'], crew: null, stations: [] };
    const sent = () => server.post('/api/people', body, { by, key: 'enroll-bo' }).expect(201);
    const [first, second] = [(await sent()).body, (await sent()).body];
    expect(second.person).toBe(first.person);

    const { people } = (await server.get('/api/people', await admin()).expect(200)).body;
    expect(people.filter(({ name }: { name: string }) => name === 'Bo')).toHaveLength(1);
  });

  it('lose everything that let them in the moment they leave, on every tablet', async () => {
    const { person, pin } = await enroll();
    const cookies = [cookieOf(await signIn(person, pin)), cookieOf(await signIn(person, pin))];
    for (const cookie of cookies) await server.get('/api/me', cookie).expect(200);

    await server.post(`/api/people/${person}/leaving`, {}, { by }).expect(201);
    for (const cookie of cookies) await server.get('/api/me', cookie).expect(401);
    await signIn(person, pin).expect(401);
  });

  it('keep no old PIN and no old session when they are given a new PIN', async () => {
    const { person, pin } = await enroll();
    const cookie = cookieOf(await signIn(person, pin));
    const renewed = await server.post(`/api/people/${person}/pin`, {}, { by }).expect(201);

    await server.get('/api/me', cookie).expect(401);
    await signIn(person, pin).expect(401);
    await signIn(person, renewed.body.pin).expect(200);
  });

  it('are known by no new session to whoever had the old one: signing in replaces it', async () => {
    const before = cookieOf(await signIn('lead', PIN));
    const after = cookieOf(
      await request(server.address)
        .post('/api/sign-in')
        .set('cookie', before)
        .send({ person: 'manager', pin: PIN }),
    );
    expect(after).not.toBe(before);
    await server.get('/api/me', before).expect(401);
    await server.get('/api/me', after).expect(200);
  });

  it('see and end their own sessions, and nobody else’s', async () => {
    const cookie = cookieOf(await signIn('lead', PIN));
    const own = (await server.get('/api/sessions', cookie).expect(200)).body.sessions;
    const all = (await server.get('/api/sessions', await admin()).expect(200)).body.sessions;
    expect(new Set(own.map(({ actor }: { actor: string }) => actor))).toStrictEqual(new Set(['lead']));
    const other = all.find(({ actor }: { actor: string }) => actor === 'manager');

    await server.post(`/api/sessions/${other.id}/end`, {}, { by: 'lead' }).expect(404);
    for (const { id } of own) {
      await request(server.address)
        .post(`/api/sessions/${id}/end`)
        .set('cookie', await admin())
        .send({})
        .expect(200);
    }
    await server.get('/api/me', cookie).expect(401);
  });

  it('are counted together when they are refused, under no name that was typed', async () => {
    for (let n = 0; n < 3; n += 1) await signIn('inspector', '0000').expect(401);
    for (let n = 0; n < 2; n += 1) await signIn('no such person 5578', '0000').expect(401);
    for (let n = 0; n < 4; n += 1) await server.get('/api/people', await server.session('lead')).expect(403);
    await server.stop();
    await server.again();

    const seen = await accesses();
    expect(seen).toContainEqual(
      expect.objectContaining({
        type: 'SignInsRefused',
        account: 'Ines',
        data: expect.objectContaining({ count: 3 }),
      }),
    );
    expect(seen).toContainEqual(
      expect.objectContaining({
        type: 'EntriesRefused',
        account: 'Leon',
        data: expect.objectContaining({ count: 4, route: 'GET /api/people' }),
      }),
    );
    expect(JSON.stringify(seen)).not.toContain('5578');
  });

  it('and programs are told apart: a token is shown once, works, and ends when it is withdrawn', async () => {
    const wish = { role: 'machine', name: 'torque driver' };
    const { token } = (await server.post('/api/tokens', wish, { by }).expect(201)).body;
    const asMachine = () => request(server.address).get('/api/me').set('authorization', `Bearer ${token}`);
    await asMachine().expect(200);

    const { tokens } = (await server.get('/api/tokens', await admin()).expect(200)).body;
    expect(JSON.stringify(tokens)).not.toContain(token);
    const { id } = tokens.find(({ name }: { name: string }) => name === 'torque driver');
    await server.post(`/api/tokens/${id}/end`, {}, { by }).expect(200);
    await asMachine().expect(401);
  });
});

const PASSWORD = 'plates before drywall, always';

describe('a plant without an administrator', () => {
  it('is set up by whoever sees the code that the server prints, once', async () => {
    const server = await openTestServer({ demonstration: false, people: [] });
    const setUp = (code: string) =>
      request(server.address).post('/api/setup').send({ code, name: 'Ada', password: PASSWORD });
    expect((await request(server.address).get('/api/setup').expect(200)).body).toStrictEqual({
      needed: true,
    });

    await setUp('WRONGWRONGWR').expect(401);
    const code = server.setupCode() ?? '';
    const made = await setUp(`${code.slice(0, 4).toLowerCase()} ${code.slice(4)}`).expect(200);
    expect(made.body.me).toMatchObject({ name: 'Ada', roles: ['administrator'] });

    expect((await request(server.address).get('/api/setup').expect(200)).body).toStrictEqual({
      needed: false,
    });
    await setUp(code).expect(401);
    await request(server.address)
      .post('/api/sign-in')
      .send({ person: made.body.me.actor, pin: PASSWORD })
      .expect(200);
    await server.clear();
  });
});
