import { request as httpRequest } from 'node:http';
import { buildUpTo } from '../support/build-up';
import type { TestServer } from '../support/server';
import { openTestServer } from '../support/server';

const SERIAL = 'T-500A';
const work = (fields: object = {}): object => ({ serial: SERIAL, operation: 'wire-protected', ...fields });
const value = (characteristic: string, fields: object): object => ({
  values: [{ characteristic, ...fields }],
});

describe('what the server cannot take', () => {
  let server: TestServer;
  let head: number;
  beforeAll(async () => {
    server = await openTestServer({
      before: async (plant) => {
        await buildUpTo(plant, { home: 'T-500', station: 'drywall', except: ['wire-protected'] });
      },
    });
    head = await server.head();
  });
  /** Whatever was sent: nothing of it is on record, and the server is up. */
  afterEach(async () => expect(await server.head()).toBe(head));
  afterAll(() => server.clear());

  it.each([
    ['an unknown serial', work({ serial: 'T-999A' }), 404, 'section-unknown', '#/serial'],
    ['an unknown operation', work({ operation: 'painted-gold' }), 422, 'operation-unknown', '#/operation'],
    [
      'a unit of another kind',
      work({ operation: 'attic-insulated', ...value('eave-gap', { value: '1', unit: '[psi]' }) }),
      422,
      'unit-of-other-kind',
      '#/values/0',
    ],
    [
      'a value that is no number',
      work(value('bare-notches', { value: 'none' })),
      422,
      'value-not-a-count',
      '#/values/0',
    ],
    [
      'a count below none',
      work(value('bare-notches', { value: '-5' })),
      422,
      'value-not-a-count',
      '#/values/0',
    ],
    [
      'a length below zero',
      work({ operation: 'attic-insulated', ...value('eave-gap', { value: '-3', unit: '[in_i]' }) }),
      422,
      'value-below-zero',
      '#/values/0',
    ],
    [
      'a time that has not come yet',
      work({ occurredAt: '2036-01-01T08:00:00.000-06:00' }),
      422,
      'happens-later',
      '#/occurredAt',
    ],
    [
      'a unit nobody measures in',
      work(value('bare-notches', { value: '0', unit: 'parsec' })),
      422,
      'unit-unknown',
      '#/values/0',
    ],
    [
      'a characteristic of another operation',
      work(value('glazing', { value: 'storm' })),
      422,
      'characteristic-unknown',
      '#/values/0',
    ],
    [
      'a serial that no label could carry',
      work({ serial: 'T 500;--' }),
      400,
      'request-malformed',
      '#/serial',
    ],
    ['a missing field', { serial: SERIAL }, 400, 'request-malformed', '#/operation'],
    [
      'a number where text is measured',
      work(value('bare-notches', { value: 0 })),
      400,
      'request-malformed',
      '#/values/0/value',
    ],
    ['a field that does not belong', work({ colour: 'gold' }), 400, 'request-malformed', '#/colour'],
    [
      'a time without its offset',
      work({ occurredAt: '2026-03-02T08:00:00' }),
      400,
      'request-malformed',
      '#/occurredAt',
    ],
    ['an array in place of an object', [], 400, 'request-malformed', '#'],
  ])('is %s: a problem that names the field', async (...given) => {
    const [, body, status, code, pointer] = given;
    const answer = await server.post('/api/work', body);

    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(answer.body).toMatchObject({
      type: `urn:studbook:problem:${code}`,
      status,
      code,
      title: expect.stringMatching(/\w/),
      errors: expect.arrayContaining([{ pointer, detail: expect.stringMatching(/\w/) }]),
    });
    expect(answer.status).toBe(status);
  });

  it('is every wrong field at once', async () => {
    const answer = await server.post('/api/work', {
      operation: 7,
      values: [{ value: '1' }, { characteristic: 'a', value: '' }],
    });

    expect(answer.body.errors.map(({ pointer }: { pointer: string }) => pointer)).toStrictEqual([
      '#/serial',
      '#/operation',
      '#/values/0/characteristic',
      '#/values/1/value',
    ]);
  });

  it.each([
    ['cut off', '{"serial":"T-500A","operation":', 'application/json', 400, 'request-malformed', '#'],
    ['empty', '', 'application/json', 400, 'request-malformed', '#'],
    [
      'a form',
      'serial=T-500A',
      'application/x-www-form-urlencoded',
      415,
      'body-not-json',
      '#/header/content-type',
    ],
    [
      'plain text, as a form of another site may send it',
      '{}',
      'text/plain',
      415,
      'body-not-json',
      '#/header/content-type',
    ],
    [
      'larger than a day of entries',
      `{"serial":"${'x'.repeat(300_000)}"}`,
      'application/json',
      413,
      'body-too-large',
      '#',
    ],
    [
      'a prototype to pollute',
      '{"__proto__":{"role":"administrator"},"serial":"T-500A"}',
      'application/json',
      400,
      'request-malformed',
      '#',
    ],
  ])('is a body that is %s', async (...given) => {
    const [, body, media, status, code, pointer] = given;
    const answer = await server.post('/api/work', {}).set('content-type', media).send(body);

    expect(answer.body).toMatchObject({ status, code, errors: [expect.objectContaining({ pointer })] });
    expect(answer.status).toBe(status);
  });

  it('is work without an idempotency key', async () => {
    const answer = await server.post('/api/work', work()).unset('idempotency-key').expect(400);
    expect(answer.body.errors[0].pointer).toBe('#/header/idempotency-key');
  });

  it.each([
    ['/api/line?stage=gone', '#/query/stage'],
    ['/api/line?colour=gold', '#/query/colour'],
    ['/api/yield', '#/query/by'],
    ['/api/yield?by=station&from=yesterday', '#/query/from'],
    ['/api/yield?by=station&from=2026-03-02&to=2026-03-01', '#/query/to'],
    ['/api/yield/trend', '#/query/station'],
    ['/api/yield/sections?station=floor&which=all', '#/query/which'],
    ['/api/defects/counts?by=moon', '#/query/by'],
    ['/api/sections/T%20500', '#/path/serial'],
    ['/api/stream?after=-1', '#/query/after'],
  ])('is a question asked wrong: %s', async (path, pointer) => {
    const answer = await server.get(path).expect(400);
    expect(answer.body.errors).toContainEqual({ pointer, detail: expect.stringMatching(/\w/) });
  });

  it.each([
    ['/api/sections/T-999A', 404, 'serial-unknown'],
    ['/api/homes/T-999/history', 404, 'serial-unknown'],
    ['/api/nothing', 404, 'route-unknown'],
    ['/api/work', 405, 'method-not-allowed'],
    ['/api/sections/%E0%A4%A', 400, 'request-malformed'],
  ])('is answered as a problem: GET %s, %i', async (path, status, code) => {
    const answer = await server.get(path);
    expect(answer.body).toMatchObject({ status, code });
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(answer.status).toBe(status);
  });

  it('says which methods an address answers', async () => {
    expect((await server.get('/api/work')).headers['allow']).toBe('POST');
    expect((await server.post('/api/line', {})).headers['allow']).toBe('GET');
    expect((await server.get('/api/homes/T-500/history').expect(200)).status).toBe(200);
  });

  it('is not told what went on inside', async () => {
    const answers = await Promise.all([
      server.post('/api/work', work({ serial: 'T-999A' })),
      server.get('/api/nothing'),
    ]);
    for (const { text } of answers) expect(text).not.toMatch(/node_modules|\.ts:|\bat \w+\./);
  });

  it('is a sender that hangs up half way', async () => {
    const { port, hostname } = new URL(server.address);
    await new Promise<void>((resolve) => {
      const half = httpRequest({
        port,
        hostname,
        path: '/api/work',
        method: 'POST',
        headers: { 'content-length': 100, 'content-type': 'application/json' },
      });
      half.on('error', () => resolve());
      half.write('{"serial"', () => half.destroy(new Error('gone')));
    });
    await server.get('/api/health').expect(200);
  });
});

describe('a key that comes again', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await openTestServer();
  });
  afterAll(() => server.clear());
  const lot = (number: string): object => ({ lot: number, kind: 'batt' });

  /** draft-ietf-httpapi-idempotency-key-header, section 2.7: another payload under the same key is 422. */
  it('with other content is refused with 422, and nothing is recorded', async () => {
    await server.post('/api/lots', lot('L-1'), { key: 'once' }).expect(201);
    const head = await server.head();
    const answer = await server.post('/api/lots', lot('L-2'), { key: 'once' }).expect(422);

    expect(answer.body).toMatchObject({
      code: 'key-reused',
      errors: [{ pointer: '#/header/idempotency-key', detail: expect.stringMatching(/other content/) }],
    });
    expect(await server.head()).toBe(head);
  });

  it('with the same content is answered the same, quoted or not, also when both are sent at once', async () => {
    const [one, other] = await Promise.all([
      server.post('/api/lots', lot('L-3'), { key: 'twice' }),
      server.post('/api/lots', lot('L-3')).set('idempotency-key', 'twice'),
    ]);
    expect([one.status, other.status]).toStrictEqual([201, 201]);
    expect(one.body.position).toBe(other.body.position);
    expect([one.body.repeated, other.body.repeated].sort()).toStrictEqual([false, true]);
  });
});
