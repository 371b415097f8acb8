import { ROUTES } from '@libs/contracts';
import type { SentBodyOf } from '@libs/contracts';
import type { Plant, Sender } from '@libs/plant';
import { buildUpTo } from '../support/build-up';
import { openTestServer } from '../support/server';
import type { TestServer } from '../support/server';

/** seeds/rulebook: what the owner is told of `wired`. */
const WIRED = 'The wiring was run and the electrical panel was set.';

const tellAs = (plant: Plant) => {
  let sent = 0;
  return async (body: SentBodyOf<'work'>, actor: string): Promise<void> => {
    const sender: Sender = { key: `book-${String((sent += 1))}`, actor, assurance: 'pin' };
    const told = await plant.tell.work(ROUTES.work.body.parse(body), sender, {});
    expect(told.ok).toBe(true);
  };
};

describe('the build book', () => {
  let server: TestServer;
  let plant: Plant;
  beforeAll(async () => {
    server = await openTestServer({
      before: async (before) => {
        plant = before;
        const except = ['rough-in-inspected'];
        await buildUpTo(plant, { home: 'T-800', station: 'finish', except, halves: ['A', 'B'] });
        const tell = tellAs(plant);
        for (const serial of ['T-800A', 'T-800B'])
          await tell(
            { serial, operation: 'rough-in-inspected', photos: ['b'.repeat(64)] },
            'built-inspector',
          );
        books.push(await plant.asks.buildBook('T-800', false), await plant.asks.buildBook('T-800A', true));
      },
    });
  });
  afterAll(() => server.clear());
  const books: (Awaited<ReturnType<Plant['asks']['buildBook']>> | undefined)[] = [];

  it('does not say that an inspector saw what was covered before the inspector came', () => {
    const wired = books[0]?.stations.flatMap(({ work }) => work).find(({ says }) => says.en === WIRED);
    expect(wired).toMatchObject({ hidden: true, known: 'signed' });
  });

  it('is that of the whole home, whichever of its serials is asked for', () => {
    expect(books[1]?.home).toBe('T-800');
    expect(books[1]?.sections.map(({ serial }) => serial)).toStrictEqual(['T-800A', 'T-800B']);
  });

  it('names what is not on record as done rather than leaving it out', () => {
    const told = books[0]?.stations.flatMap(({ work }) => work).map(({ says }) => says.en) ?? [];
    // The stations after the texture and paint have not been reached.
    expect(books[0]?.open.map(({ en }) => en)).toContain('Painted');
    expect(told.some((says) => /paint/i.test(says))).toBe(false);
  });
});
