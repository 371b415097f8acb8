import type { AnswerOf } from '@libs/contracts';
import { buildUpTo } from '../support/build-up';
import { mountLots } from '../support/lots';
import type { TestServer } from '../support/server';
import { openTestServer } from '../support/server';

type Finding = AnswerOf<'asking'>['findings'][number];

const SERIAL = 'T-500A';
const PLATES = {
  serial: SERIAL,
  operation: 'wire-protected',
  values: [
    { characteristic: 'bare-notches', value: '0' },
    { characteristic: 'sleeves', value: 'yes' },
  ],
  photos: ['a'.repeat(64)],
};

/** The story told over HTTP: bare wire is not covered, and the record shows how it was put right. */
describe('drywall over bare wire', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await openTestServer({
      before: async (plant) => {
        await mountLots(plant);
        await buildUpTo(plant, { home: 'T-500', station: 'drywall', except: ['wire-protected'] });
      },
    });
  });
  afterAll(() => server.clear());

  const typesOf = async (): Promise<readonly string[]> =>
    (await server.eventsOf(SERIAL)).map(({ type }) => type);

  it('is refused while the plates are missing, naming them and the source; the asking is on record', async () => {
    const asked = await server.post('/api/askings', { serial: SERIAL, operation: 'drywalled' }).expect(200);

    expect(asked.body.answer).toBe('refused');
    expect(
      asked.body.findings.map(({ rule, grade, operation }: Finding) => [rule, grade, operation]),
    ).toStrictEqual([['cover-hides-unproven', 'refuse', 'wire-protected']]);
    expect(asked.body.findings[0].source).toMatchObject({ kind: 'published', reference: 'NEC 300.4(A)(2)' });
    expect((await typesOf()).at(-1)).toBe('AskingRefused');
  });

  it('is cleared once they are recorded, which also releases the hold that waited for them', async () => {
    const told = await server.post('/api/work', PLATES).expect(201);
    expect(told.body).toMatchObject({ serial: SERIAL, repeated: false, findings: [], holds: [] });

    const asked = await server.post('/api/askings', { serial: SERIAL, operation: 'drywalled' }).expect(200);
    expect(asked.body).toMatchObject({ answer: 'cleared', findings: [] });
    expect((await typesOf()).slice(-3)).toStrictEqual(['WorkRecorded', 'HoldReleased', 'AskingCleared']);
  });

  it('stands in the history with who, when and under which revision', async () => {
    const plates = (await server.eventsOf(SERIAL)).findLast(({ type }) => type === 'WorkRecorded');
    expect(plates).toMatchObject({
      actor: 'lead',
      by: 'Leon',
      revision: 1,
      data: { operation: 'wire-protected' },
    });
    expect(plates?.leaf).toMatch(/^[0-9a-f]{64}$/);
  });

  it('is answered the same again when the tablet sends the same again', async () => {
    const key = 'a-tablet-that-lost-its-answer';
    const first = await server.post('/api/work', PLATES, { key }).expect(201);
    const head = await server.head();
    const again = await server.post('/api/work', PLATES, { key }).expect(201);

    expect(again.body).toMatchObject({
      position: first.body.position,
      events: first.body.events,
      repeated: true,
    });
    expect(await server.head()).toBe(head);
  });

  it('is still on record after the server was stopped and started', async () => {
    const before = await server.eventsOf(SERIAL);
    await server.stop();
    await server.again();
    expect(await server.eventsOf(SERIAL)).toStrictEqual(before);
  });
});
