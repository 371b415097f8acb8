import request from 'supertest';
import { buildUpTo } from '../support/build-up';
import { openTestServer, PIN } from '../support/server';
import type { TestServer } from '../support/server';

describe('what is signed by hand', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await openTestServer({
      before: async (plant) => {
        await buildUpTo(plant, { home: 'T-700', station: 'drywall', except: [] });
      },
    });
    await server
      .post('/api/red-tags', { serial: 'T-700A', tag: 'R-1' }, { by: 'agency' })
      .then((answer) => expect(answer.status).toBe(201));
  });
  afterAll(() => server.clear());

  const lift = (key: string) =>
    server.post('/api/red-tags/R-1/lifting', { serial: 'T-700A' }, { by: 'agency', key });
  const sign = async (by: string, body: object) =>
    request(server.address)
      .post('/api/signatures')
      .set('cookie', await server.session(by))
      .send(body);

  it('is not taken on the word of an open session', async () => {
    const refused = await lift('lift-1').expect(403);
    expect(refused.body.code).toBe('signature-needed');
  });

  it('is not signed with a wrong PIN, by somebody else, or under another key', async () => {
    expect((await sign('agency', { key: 'lift-2', secret: '0000' })).status).toBe(422);
    expect((await sign('manager', { key: 'lift-2', secret: PIN })).status).toBe(200);
    expect((await sign('agency', { key: 'another', secret: PIN })).status).toBe(200);
    await lift('lift-2').expect(403);
  });

  it('is not signed by a program', async () => {
    const answer = await request(server.address)
      .post('/api/signatures')
      .set('authorization', `Bearer ${server.token}`)
      .send({ key: 'lift-2', secret: PIN });
    expect(answer.body).toMatchObject({ status: 403, code: 'person-needed' });
  });

  it('stands in the record: what it means, how it was given, when, and by whom', async () => {
    expect((await sign('agency', { key: 'lift-3', secret: PIN })).status).toBe(200);
    const lifted = await lift('lift-3').expect(201);
    const again = await lift('lift-3').expect(201);
    expect(again.body.position).toBe(lifted.body.position);

    const entry = (await server.eventsOf('T-700A')).find(({ type }) => type === 'RedTagLifted');
    expect(entry).toMatchObject({
      actor: 'agency',
      signature: { meaning: 'inspected', means: 'pin', at: expect.stringMatching(/^\d{4}-.*Z$/) },
    });
  });

  it('is asked of a disposition only where the work stays as it is', async () => {
    const send = (disposition: string) =>
      server.post('/api/defects/d-1/disposition', { serial: 'T-700A', disposition }, { by: 'manager' });
    expect((await send('use-as-is')).body.code).toBe('signature-needed');
    expect((await send('rework')).body.code).not.toBe('signature-needed');
  });
});
