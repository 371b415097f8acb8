import { randomUUID } from 'node:crypto';
import { ROUTES } from '@libs/contracts';
import request from 'supertest';
import { buildUpTo } from '../support/build-up';
import { phoneJpeg } from '../support/pictures';
import type { TestServer } from '../support/server';
import { openTestServer } from '../support/server';

/** seeds/rulebook/operations-3-rough-in.yaml */
const WIRED = 'The wiring was run and the electrical panel was set.';
const [OURS, THEIRS] = ['T-600', 'T-700'];

describe('a link without an account', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await openTestServer({
      before: async (plant) => {
        for (const home of [OURS, THEIRS])
          await buildUpTo(plant, { home, station: 'finish', except: [], halves: ['A', 'B'] });
      },
    });
  });
  afterAll(() => server.clear());

  const issue = async (purpose: string, home = OURS, by = 'manager'): Promise<request.Response> =>
    server.post(`/api/homes/${home}/links`, { purpose, name: 'Whoever lives there', days: 30 }, { by });
  const tokenFor = async (purpose: string, home = OURS): Promise<string> =>
    String((await issue(purpose, home)).body.token);
  const send = (path: string, token: string | null, body: object = {}): request.Test => {
    const sent = request(server.address).post(path).set('idempotency-key', randomUUID());
    return (token === null ? sent : sent.set('authorization', `Bearer ${token}`)).send(body);
  };
  const accesses = async (): Promise<readonly { type: string; by: string; data: object }[]> =>
    (await server.get('/api/accesses', await server.session('administrator'))).body.accesses;

  it('opens the build book of its home, in the rulebook’s plain words and with nobody’s name in it', async () => {
    const answer = await send(ROUTES.linkBook.path, await tokenFor('owner'));
    expect(answer.status).toBe(200);
    expect(answer.body.home).toBe(OURS);
    expect(answer.body.mended).toBeNull();

    const work: readonly { says: { en: string }; hidden: boolean; known: string }[] =
      answer.body.stations.flatMap(({ work }: { work: [] }) => work);
    // seeds/rulebook: `drywalled` hides `wired`, and `rough-in-inspected` asks for it by somebody not of the crew.
    const wired = work.find(({ says }) => says.en === WIRED);
    expect(wired).toMatchObject({ hidden: true, known: 'seen' });
    for (const name of ['Leon', 'Mara', 'Ines', THEIRS]) expect(answer.text).not.toContain(name);
  });

  it('records site work of its home, judged like any other and signed by the name given', async () => {
    const token = await tokenFor('installer');
    const site = await send(ROUTES.linkSite.path, token);
    expect(site.body.home).toBe(OURS);
    const operations: readonly { operation: string }[] = site.body.operations;
    expect(operations.map(({ operation }) => operation)).toContain('blocking-removed');

    const photo = await request(server.address)
      .post(ROUTES.linkPhoto.path)
      .set('authorization', `Bearer ${token}`)
      .set('content-type', 'image/jpeg')
      .send(phoneJpeg());
    const body = { name: 'Iker Setter', operation: 'blocking-removed', photos: [String(photo.body.photo)] };
    await send(ROUTES.linkWork.path, token, body).expect(201);

    const entries = await server.eventsOf(OURS);
    const told = entries.find(
      ({ type, data }) => type === 'WorkRecorded' && JSON.stringify(data).includes(String(photo.body.photo)),
    );
    expect(told).toMatchObject({ serial: OURS, by: 'Iker Setter', station: 'site' });
    expect(told?.actor).not.toContain('Iker');
  });

  it('finds what an installer left out as it would for a lead of the plant', async () => {
    const token = await tokenFor('installer');
    const answer = await send(ROUTES.linkWork.path, token, { name: 'Iker Setter', operation: 'roof-joined' });
    expect(answer.status).toBe(201);
    expect(answer.body.findings.length).toBeGreaterThan(0);
  });

  it('reaches no other home, whatever is asked for with it', async () => {
    const token = await tokenFor('installer');
    const before = (await server.eventsOf(THEIRS)).length;
    for (const more of [{ serial: THEIRS }, { home: THEIRS }]) {
      const body = { name: 'Iker Setter', operation: 'blocking-removed', ...more };
      expect((await send(ROUTES.linkWork.path, token, body)).status).toBe(400);
      expect((await send(ROUTES.linkSite.path, token, more)).status).toBeGreaterThanOrEqual(400);
    }
    // As a token of the plant's own routes it is nobody's.
    for (const path of [`/api/homes/${OURS}/history`, `/api/sections/${THEIRS}A`, '/api/line']) {
      const asked = await request(server.address).get(path).set('authorization', `Bearer ${token}`);
      expect(asked.status).toBe(401);
    }
    expect((await send('/api/work', token, { serial: OURS, operation: 'blocking-removed' })).status).toBe(
      401,
    );
    expect((await server.eventsOf(THEIRS)).length).toBe(before);
  });

  it('takes no work of the plant, only of the site', async () => {
    const answer = await send(ROUTES.linkWork.path, await tokenFor('installer'), {
      ...{ name: 'Iker Setter', operation: 'wired' },
    });
    expect({ status: answer.status, code: answer.body.code }).toStrictEqual({
      ...{ status: 422, code: 'not-site-work' },
    });
  });

  it('is refused in the same words when made up, ended, left out, or for something else', async () => {
    const issued = await issue('owner');
    const owner = String(issued.body.token);
    const ended = await issue('owner');
    await server
      .post(`/api/homes/${OURS}/links/${String(ended.body.link)}/end`, {}, { by: 'manager' })
      .expect(200);

    const refusals = [
      await send(ROUTES.linkBook.path, 'sbl_madeup'),
      await send(ROUTES.linkBook.path, String(ended.body.token)),
      await send(ROUTES.linkBook.path, null),
      await send(ROUTES.linkBook.path, await tokenFor('installer')),
      await send(ROUTES.linkSite.path, owner),
      await send(ROUTES.linkWork.path, owner, { name: 'x', operation: 'blocking-removed' }),
    ].map(({ status, text }) => ({ status, text }));
    expect(refusals[0]).toMatchObject({ status: 401 });
    expect(new Set(refusals.map((refusal) => JSON.stringify(refusal))).size).toBe(1);
    await send(ROUTES.linkBook.path, owner).expect(200);
  });

  it('is ended by the home it is out for, and by no other', async () => {
    const { link, token } = (await issue('owner')).body;
    const path = `/api/homes/${THEIRS}/links/${String(link)}/end`;
    await server.post(path, {}, { by: 'manager' }).expect(404);
    await send(ROUTES.linkBook.path, String(token)).expect(200);
  });

  it('is made by a quality manager alone, and listed without what opens it', async () => {
    expect((await issue('owner', OURS, 'lead')).status).toBe(403);
    expect((await issue('owner', OURS, 'auditor')).status).toBe(403);
    expect((await issue('owner', 'T-999')).status).toBe(404);
    const { token, link } = (await issue('owner')).body;
    const listed = await server.get(`/api/homes/${OURS}/links`, await server.session('manager'));
    expect(listed.text).toContain(String(link));
    expect(listed.text).not.toContain(String(token));
  });

  it('stands in the ledger of accesses: made, opened and ended', async () => {
    const { link, token } = (await issue('owner', THEIRS)).body;
    await send(ROUTES.linkBook.path, String(token)).expect(200);
    await send(ROUTES.linkBook.path, String(token)).expect(200);
    await server.post(`/api/homes/${THEIRS}/links/${String(link)}/end`, {}, { by: 'manager' }).expect(200);

    const told = (await accesses()).filter(({ data }) => JSON.stringify(data).includes(String(link)));
    expect(told.map(({ type, by }) => [type, by]).reverse()).toStrictEqual([
      ['LinkIssued', 'Mara'],
      ['LinkOpened', link],
      ['LinkEnded', 'Mara'],
    ]);
  });
});
