import { generateSync } from 'otplib';
import request from 'supertest';
import { cookiesOf } from '../support/cookies';
import { openTestServer, PIN } from '../support/server';
import type { TestServer } from '../support/server';

const PASSWORD = 'plates before drywall, always';

describe('how people show who they are', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await openTestServer();
  });
  afterAll(() => server.clear());

  const post = (path: string, cookie: string, body: object) =>
    request(server.address).post(path).set('cookie', cookie).send(body);
  const signIn = (body: object) => request(server.address).post('/api/sign-in').send(body);

  it('is a password that only they know, chosen by an invitation that works once', async () => {
    const enrolled = await server
      .post(
        '/api/people',
        { name: 'Bo', roles: ['auditor'], crew: null, stations: [] },
        { by: 'administrator' },
      )
      .expect(201);
    const { person } = enrolled.body;
    const admin = await server.session('administrator');
    const { code } = (await post(`/api/people/${person}/invitation`, admin, {}).expect(200)).body;

    const take = (password: string) =>
      request(server.address).post('/api/invitations').send({ code, password });
    expect((await take('password').expect(422)).body.code).toBe('password-too-common');
    const taken = await take(PASSWORD).expect(200);
    expect(taken.body.me).toMatchObject({ name: 'Bo', roles: ['auditor'] });
    await take(PASSWORD).expect(401);
    await signIn({ person, pin: PASSWORD }).expect(200);
  });

  it('is asked again before a password changes, whoever sits at an open session', async () => {
    const cookie = cookiesOf(await signIn({ person: 'auditor', pin: PIN }).expect(200));
    await post('/api/own-access/password', cookie, { secret: '0000', password: PASSWORD }).expect(422);
    await post('/api/own-access/password', cookie, { secret: PIN, password: 'iloveyou' }).expect(422);
    await post('/api/own-access/password', cookie, { secret: PIN, password: PASSWORD }).expect(200);
    await server.get('/api/me', cookie).expect(200);
    await server.get('/api/me', await server.session('auditor')).expect(401);
  });

  it('is a code of their phone besides, once they want it', async () => {
    const cookie = await server.session('manager');
    const { secret, address } = (await post('/api/own-access/codes', cookie, { secret: PIN }).expect(200))
      .body;
    expect(address).toBe(`otpauth://totp/Studbook:Mara?secret=${secret}&issuer=Studbook`);
    await post('/api/own-access/codes/confirmation', cookie, { code: '000000' }).expect(422);
    const code = generateSync({ secret });
    const { recovery } = (await post('/api/own-access/codes/confirmation', cookie, { code }).expect(200))
      .body;

    expect((await signIn({ person: 'manager', pin: PIN }).expect(401)).body.code).toBe('code-needed');
    expect((await signIn({ person: 'manager', pin: PIN, code }).expect(401)).body.code).toBe('code-wrong');
    await signIn({ person: 'manager', pin: PIN, code: recovery[0] }).expect(200);
    expect((await server.get('/api/own-access', cookie).expect(200)).body).toMatchObject({
      codes: true,
      recoveryLeft: 9,
      password: false,
      passkeys: [],
    });
    await post('/api/people/manager/factors/end', await server.session('administrator'), {}).expect(200);
    await server.get('/api/me', cookie).expect(401);
    await signIn({ person: 'manager', pin: PIN }).expect(200);
  });

  it('is no passkey that was made up, and none for an address that has no name', async () => {
    const answer = { id: 'x', rawId: 'x', type: 'public-key', response: { clientDataJSON: 'e30' } };
    const asked = await request(server.address).post('/api/sign-in/passkey/question').send({}).expect(409);
    expect(asked.body.code).toBe('passkeys-not-here');
    const local = (path: string, body: object) =>
      request(server.address).post(path).set('host', 'localhost:3900').send(body);
    const { options } = (await local('/api/sign-in/passkey/question', {}).expect(200)).body;
    expect(options).toMatchObject({ rpId: 'localhost', userVerification: 'required' });
    await local('/api/sign-in/passkey', { answer }).expect(401);
  });

  it('never goes by a token in the cookie, nor by a session in the header', async () => {
    await request(server.address)
      .get('/api/me')
      .set('cookie', `studbook_session=${server.token}`)
      .expect(401);
    const session = (await server.session('lead')).split('=')[1] ?? '';
    await request(server.address).get('/api/me').set('authorization', `Bearer ${session}`).expect(401);
  });

  it('holds a token to its scopes', async () => {
    const wish = { role: 'machine', name: 'display', scopes: ['read'] };
    const { token } = (await server.post('/api/tokens', wish, { by: 'administrator' }).expect(201)).body;
    const as = (made: request.Test) => made.set('authorization', `Bearer ${token}`);
    await as(request(server.address).get('/api/line')).expect(200);
    const told = as(request(server.address).post('/api/lots'))
      .set('idempotency-key', 'k')
      .send({ lot: 'L-1', kind: 'batt' });
    expect((await told.expect(403)).body.code).toBe('scope-missing');
    expect((await as(request(server.address).get('/metrics')).expect(403)).body.code).toBe('scope-missing');
  });

  it('changes with their roles: no session outlives the change', async () => {
    const cookie = await server.session('inspector');
    const body = { person: 'inspector', name: 'Ines', roles: ['auditor'], crew: null, stations: [] };
    await server.post('/api/people', body, { by: 'administrator' }).expect(201);
    await server.get('/api/me', cookie).expect(401);
  });
});

describe('a plant whose PINs count on its tablets only', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await openTestServer({
      demonstration: false,
      pinsOnTablets: true,
      signedIn: [],
      passwords: { administrator: PASSWORD },
    });
  });
  afterAll(() => server.clear());
  const at = (path: string, body: object, cookie = '') =>
    request(server.address).post(path).set('cookie', cookie).send(body);

  it('takes no PIN elsewhere, and says so of everybody alike', async () => {
    for (const person of ['lead', 'nobody']) {
      const { body } = await at('/api/sign-in', { person, pin: PIN }).expect(403);
      expect(body.code).toBe('tablet-needed');
    }
    expect((await request(server.address).get('/api/binding').expect(200)).body).toStrictEqual({
      tablet: null,
      needed: true,
    });
  });

  it('takes it on a tablet bound by a code that an administrator was shown, until the tablet ends', async () => {
    const admin = cookiesOf(await at('/api/sign-in', { person: 'administrator', pin: PASSWORD }).expect(200));
    const offered = await at('/api/tablets', { name: 'rough-in 1', stations: ['rough-in'] }, admin).expect(
      200,
    );
    await at('/api/binding', { code: 'B7KD-93MX-TQ2W' }).expect(401);
    const bound = await at('/api/binding', { code: offered.body.code.toLowerCase() }).expect(200);
    expect(bound.body.tablet).toMatchObject({ name: 'rough-in 1', stations: ['rough-in'] });
    expect(String(bound.headers['set-cookie'])).toMatch(/HttpOnly; SameSite=Strict/);
    await at('/api/binding', { code: offered.body.code }).expect(401);

    const tablet = cookiesOf(bound);
    const signedIn = await at('/api/sign-in', { person: 'lead', pin: PIN }, tablet).expect(200);
    const both = `${tablet}; ${cookiesOf(signedIn)}`;
    const told = await at('/api/lots', { lot: 'L-1', kind: 'batt', device: 'somebody-elses' }, both)
      .set('idempotency-key', 'lot-1')
      .expect(201);
    expect(told.body.events).toHaveLength(1);

    await at(`/api/tablets/${offered.body.tablet}/end`, {}, admin).expect(200);
    await server.get('/api/me', both).expect(401);
    await at('/api/sign-in', { person: 'lead', pin: PIN }, tablet).expect(403);
    const { accesses } = (await server.get('/api/accesses', admin).expect(200)).body;
    expect(accesses.map(({ type }: { readonly type: string }) => type)).toStrictEqual(
      expect.arrayContaining(['TabletOffered', 'TabletAccepted', 'TabletEnded', 'SignedIn']),
    );
  });
});
