import { openTestServer } from '../support/server';
import type { TestServer } from '../support/server';

/** Found by the fuzzer: a name with half a character in it went into the ledger of accesses, which never took it. */
describe('text with half of a surrogate pair', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await openTestServer();
  });
  afterAll(() => server.clear());

  it.each([
    ['/api/tablets', { name: 'a\ud800', stations: [] }],
    ['/api/tokens', { name: '\udc00b', role: 'machine' }],
    ['/api/people', { name: 'Bo \ud83d', roles: ['auditor'], crew: null, stations: [] }],
  ])('is refused at %s, and the ledger of accesses goes on', async (path, body) => {
    const answer = await server.post(path, body, { by: 'administrator' }).expect(400);
    expect(answer.body.errors[0].detail).toMatch(/half of a surrogate pair/);
    await server.get('/api/accesses', await server.session('administrator')).expect(200);
  });

  it('is not mistaken for a whole character, nor for a backslash that was typed', async () => {
    for (const name of ['nail 🔨', 'C:\\ud800\\x'])
      await server.post('/api/tablets', { name, stations: [] }, { by: 'administrator' }).expect(200);
    const { accesses } = (
      await server.get('/api/accesses', await server.session('administrator')).expect(200)
    ).body;
    expect(accesses).toContainEqual(expect.objectContaining({ type: 'TabletOffered' }));
  });
});
