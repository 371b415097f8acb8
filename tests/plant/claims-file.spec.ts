import { DRY, HOME, WET, openSmallPlant, orderDouble } from '../support/small-plant';
import type { SmallPlant } from '../support/small-plant';

/** A file of complaints as an office keeps it, told to a whole plant on a SQLite file. */
describe('a file of complaints', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    for (const serial of [WET, DRY]) await small.tell('start', { serial, at: 'chassis' });
  });
  afterEach(() => small.clear());

  const send = (csv: string) => small.plant.claimsFile(csv, { actor: 'manager', assurance: 'pin' });
  const kept = async () => (await small.plant.asks.claims()).claims;

  const HEADER = 'received,source,home,section,component,symptom,words';
  const LAMP = `2026-11-02,owner,${HOME},${WET},outlet,dead,"the lamp, in the den, stays dark"`;
  const DRIP = `2026-11-03,retailer,${HOME},,,,it drips`;

  it('tells nothing twice when it is sent again, nor when it has grown', async () => {
    expect(await send(`${HEADER}\n${LAMP}\n`)).toStrictEqual({ rows: 1, taken: 1, refused: [] });
    const head = await small.plant.head();
    expect(await send(`${HEADER}\n${LAMP}\n`)).toStrictEqual({ rows: 1, taken: 1, refused: [] });
    expect(await small.plant.head()).toBe(head);

    await send(`${HEADER}\n${LAMP}\n${DRIP}\n`);
    expect((await kept()).map(({ words }) => words).sort()).toStrictEqual([
      'it drips',
      'the lamp, in the den, stays dark',
    ]);
  });

  it('has its bad rows named by line and column, and the others taken', async () => {
    const answer = await send(
      [HEADER, '11/3/2026,owner,,,,,when?', DRIP, `2026-11-04,owner,X99-9,,,,whose?`].join('\n'),
    );
    expect(answer).toMatchObject({ rows: 3, taken: 1, refused: [{ line: 2 }, { line: 4 }] });
    expect(answer.refused[0]?.reason).toMatch(/^received: /);
    expect(answer.refused[1]?.reason).toContain('home-unknown');
    expect(await kept()).toHaveLength(1);
  });

  it.each([
    ['a byte-order mark', `\uFEFF${HEADER}\n${DRIP}\n`],
    ['Windows line ends', `${HEADER}\r\n${DRIP}\r\n`],
    ['semicolons', `${HEADER}\n${DRIP}\n`.replaceAll(',', ';')],
  ])('is read as a spreadsheet saves it, with %s', async (_, csv) => {
    expect(await send(csv)).toStrictEqual({ rows: 1, taken: 1, refused: [] });
    expect(await kept()).toMatchObject([{ home: HOME, words: 'it drips' }]);
  });

  it('is refused whole where a column is missing, unknown or its quotes never end', async () => {
    expect((await send('source,words\nowner,x\n')).refused[0]?.reason).toContain('"received"');
    expect((await send(`${HEADER},phone\n${DRIP},1\n`)).refused[0]?.reason).toContain('"phone"');
    expect(await send(`${HEADER}\n${DRIP}\n2026-11-03,owner,"never ends\n`)).toMatchObject({ taken: 0 });
    expect(await kept()).toStrictEqual([]);
  });
});
