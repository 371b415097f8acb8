import { connect } from 'node:net';
import { unpackedFiles } from '@libs/proof';
import { zipSync } from 'fflate';
import request from 'supertest';
import { buildUpTo } from '../support/build-up';
import { cookiesOf } from '../support/cookies';
import { openTestServer, PIN } from '../support/server';
import type { TestServer } from '../support/server';

describe('someone who means harm', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await openTestServer({
      before: async (plant) => {
        await buildUpTo(plant, { home: 'T-800', station: 'drywall', except: ['wire-protected'] });
      },
    });
  });
  afterAll(() => server.clear());

  const signIn = (person: string, pin: string, headers: Record<string, string> = {}) =>
    request(server.address).post('/api/sign-in').set(headers).send({ person, pin });

  it('does not get round the wait for a person by guessing from many sides at once', async () => {
    const sides = Array.from({ length: 12 }, (_, n) =>
      signIn('auditor', `00000${String(n)}`, { 'x-forwarded-for': `203.0.113.${String(n)}` }),
    );
    const statuses = (await Promise.all(sides)).map(({ status }) => status);
    expect(statuses.filter((status) => status === 401).length).toBeLessThanOrEqual(5);
    expect(statuses).toContain(429);
    // The right PIN waits as well: nothing is learned from when it is taken.
    await signIn('auditor', PIN).expect(429);
  });

  it('plants no session: what was there before signing in opens nothing afterwards', async () => {
    const planted = 'studbook_session=planted-by-somebody-else-000000000000000000';
    const signedIn = await signIn('lead', PIN, { cookie: planted }).expect(200);
    expect(cookiesOf(signedIn)).not.toContain('planted');
    await server.get('/api/me', planted).expect(401);
  });

  it('uses no session again after it was signed out, and no token after it was withdrawn', async () => {
    const cookie = cookiesOf(await signIn('lead', PIN).expect(200));
    await request(server.address).post('/api/sign-out').set('cookie', cookie).expect(200);
    await server.get('/api/me', cookie).expect(401);
  });

  it('acts for nobody from a page of another site', async () => {
    const cookie = await server.session('manager');
    for (const from of ['cross-site', 'same-site']) {
      const sent = request(server.address)
        .post('/api/lots')
        .set({ cookie, 'sec-fetch-site': from, 'idempotency-key': from })
        .send({ lot: 'L-1', kind: 'batt' });
      expect((await sent.expect(403)).body.code).toBe('other-site');
    }
    const read = await server.get('/api/line', cookie).set('origin', 'https://elsewhere.example');
    expect(read.headers['access-control-allow-origin']).toBeUndefined();
  });

  it('reaches no one else’s session, passkey or defect by its id', async () => {
    const { sessions } = (await server.get('/api/sessions', await server.session('administrator'))).body;
    const other = sessions.find(({ actor }: { readonly actor: string }) => actor === 'manager');
    await server.post(`/api/sessions/${other.id}/end`, {}, { by: 'lead' }).expect(404);
    await server.post('/api/own-access/passkeys/passkey-somebodys/end', {}, { by: 'lead' }).expect(404);
    // A defect is told of by its section: another section's serial does not reach it.
    const made = await server
      .post(
        '/api/defects',
        { serial: 'T-800A', class: 'nonconformance', component: 'outlet', symptom: 'dead' },
        { key: 'd' },
      )
      .expect(201);
    expect(made.body.events.length).toBeGreaterThan(0);
    await server.post('/api/defects/d-0/rework', { serial: 'T-800B' }, { by: 'lead' }).expect(404);
  });

  it('pollutes no prototype, and finds nothing there', async () => {
    for (const body of [
      '{"__proto__":{"roles":["administrator"]},"lot":"L-2","kind":"batt"}',
      '{"constructor":{"prototype":{"roles":["administrator"]}},"lot":"L-2","kind":"batt"}',
    ]) {
      const sent = server.post('/api/lots', {}).set('content-type', 'application/json').send(body);
      await sent.expect(400);
    }
    expect(Reflect.get({}, 'roles')).toBeUndefined();
    for (const operation of ['__proto__', 'toString', 'constructor']) {
      const body = { recordedOn: 'T-800A', belongsTo: 'T-800B', operation };
      await server.post('/api/corrections/serial', body).expect(400);
      await server.get(`/api/containments/sharing?serial=T-800A&operation=${operation}`).expect(400);
    }
  });

  it('brings the server down with no JSON, however deep, wide or long', async () => {
    const bombs = [
      '['.repeat(100_000),
      `${'{"a":'.repeat(40_000)}1${'}'.repeat(40_000)}`,
      `{${Array.from({ length: 20_000 }, (_, n) => `"k${String(n)}":1`).join(',')}}`,
      `{"lot":${'9'.repeat(200_000)}}`,
      `{"lot":"${'x'.repeat(300_000)}"}`,
    ];
    for (const bomb of bombs) {
      const sent = server.post('/api/lots', {}).set('content-type', 'application/json').send(bomb);
      expect([400, 413]).toContain((await sent).status);
    }
    await server.get('/api/health').expect(200);
  });

  it('makes no pattern run away, in serials, codes, values or keys', async () => {
    const nasty = [`${'a'.repeat(60)}!`, `${'1'.repeat(60)}.`, '-.'.repeat(30), `${'0'.repeat(200)}x`];
    for (const text of nasty) {
      await server.get(`/api/sections/${encodeURIComponent(text)}`);
      const values = [{ characteristic: text, value: text, unit: text }];
      await server.post('/api/work', { serial: text, operation: text, values });
      await server.post('/api/lots', { lot: 'L-1', kind: 'batt' }).set('idempotency-key', `"${text}`);
    }
    await server.get('/api/health').expect(200);
  });

  it('gets no file by a path, written any way', async () => {
    for (const path of [
      '/..%2f..%2fpackage.json',
      '/assets/..%2f..%2f..%2fetc/passwd',
      '/%2e%2e/%2e%2e/etc/passwd',
      '/api/photos/..%2f..%2fkeys%2fdigest.key',
      '/api/homes/..%2fkeys/packet',
    ]) {
      const { status, text } = await server.get(path);
      expect([400, 404]).toContain(status);
      expect(text).not.toMatch(/root:|studbook"/);
    }
  });

  it('holds no socket by dribbling headers, nor gets an answer to what is no request', async () => {
    const { hostname, port } = new URL(server.address);
    const said = await new Promise<string>((resolve, reject) => {
      const socket = connect(Number(port), hostname, () => socket.write('\u0000\u0001 no http\r\n\r\n'));
      let text = '';
      socket.on('data', (chunk) => (text += chunk.toString()));
      socket.on('end', () => resolve(text));
      socket.on('error', reject);
    });
    expect(said).toMatch(/^HTTP\/1\.1 400 Bad Request\r\n/);
    expect(said).toMatch(/x-content-type-options: nosniff/);
    expect(said).toMatch(/application\/problem\+json/);
  });

  it('is counted by address, whatever tokens and cookies it makes up', async () => {
    const statuses = new Set<number>();
    for (let n = 0; n < 1_600; n += 1) {
      const made =
        n % 2 === 0
          ? { authorization: `Bearer sbk_${String(n)}` }
          : { cookie: `studbook_session=${String(n)}` };
      statuses.add((await request(server.address).get('/api/me').set(made)).status);
      if (statuses.has(429)) break;
    }
    expect(statuses).toStrictEqual(new Set([401, 429]));
  });
});

/** Where a ZIP's directory says how large a file becomes (PKWARE APPNOTE 4.3.12). */
const DIRECTORY_HEADER = Buffer.from([0x50, 0x4b, 0x01, 0x02]);
const UNPACKED_SIZE_AT = 24;

describe('a packet that means harm', () => {
  it('is not unpacked where its directory says it would fill the memory', () => {
    const bomb = Buffer.from(zipSync({ 'events.jsonl': new Uint8Array(1_000_000) }, { level: 9 }));
    expect(unpackedFiles(bomb)?.files.size).toBe(1);
    bomb.writeUInt32LE(800_000_000, bomb.indexOf(DIRECTORY_HEADER) + UNPACKED_SIZE_AT);
    expect(unpackedFiles(bomb)).toBeUndefined();
  });
});
