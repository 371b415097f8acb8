import type { AnswerOf } from '@libs/contracts';
import { inLines } from '../../apps/web/src/screens/rulebook/box-text';
import { BOX, edgesOf, layOut } from '../../apps/web/src/screens/rulebook/whole-layout';
import type { Drawn } from '../../apps/web/src/screens/rulebook/whole-layout';
import { demonstrationRulebookFiles } from '../support/demonstration-rulebook';
import { openSmallPlant } from '../support/small-plant';

type Book = AnswerOf<'rulebook'>;

const demonstration = async (): Promise<Book> => {
  const small = await openSmallPlant();
  const book = await small.plant.rulebook.book({ files: demonstrationRulebookFiles() });
  await small.clear();
  if (book === undefined) throw new Error('The demonstration rulebook cannot be read');
  return book;
};

const overlap = (one: Drawn, other: Drawn): boolean =>
  Math.abs(one.x - other.x) < BOX.wide && Math.abs(one.y - other.y) < BOX.high;

describe('the whole rulebook drawn', () => {
  let book: Book;
  beforeAll(async () => {
    book = await demonstration();
  });

  it('has each operation once, inside its station, and none over another', () => {
    const { boxes, bands, wide } = layOut(book);
    expect([...boxes.keys()].sort()).toStrictEqual(book.operations.map(({ id }) => id).sort());
    const all = [...boxes.values()];
    for (const [at, box] of all.entries()) {
      const band = bands.find(({ station }) => station === box.operation.station);
      expect(box.y).toBeGreaterThan(band?.y ?? Infinity);
      expect(box.y + BOX.high).toBeLessThanOrEqual((band?.y ?? 0) + (band?.high ?? 0));
      expect(box.x + BOX.wide).toBeLessThanOrEqual(wide);
      expect(all.slice(at + 1).filter((other) => overlap(box, other))).toStrictEqual([]);
    }
  });

  it('puts what waits for something of its own station below it', () => {
    const { boxes, edges } = layOut(book);
    const inside = edges.filter(
      ({ from, to }) => boxes.get(from)?.operation.station === boxes.get(to)?.operation.station,
    );
    expect(inside.length).toBeGreaterThan(10);
    for (const { from, to } of inside)
      expect(boxes.get(to)?.y).toBeGreaterThan(boxes.get(from)?.y ?? Infinity);
  });

  it('keeps each crew of a station in a lane of its own', () => {
    const { boxes, bands } = layOut(book);
    for (const { station, lanes } of bands) {
      for (const { operation, x } of boxes.values()) {
        if (operation.station !== station) continue;
        const own = lanes.findIndex(({ crew }) => crew === operation.crew);
        expect(x).toBeGreaterThanOrEqual(lanes[own]?.x ?? Infinity);
        expect(x + BOX.wide).toBeLessThan(lanes[own + 1]?.x ?? Infinity);
      }
    }
  });

  it('has every requirement and every cover as one line', () => {
    const edges = edgesOf(book);
    for (const { id, requires, hides } of book.operations) {
      for (const { operation } of hides)
        expect(edges).toContainEqual({ from: operation, to: id, is: 'covers' });
      for (const { operation } of requires)
        expect(edges.filter(({ from, to }) => from === operation && to === id)).toHaveLength(1);
    }
    expect(new Set(edges.map(({ from, to }) => `${from} ${to}`)).size).toBe(edges.length);
  });

  it('comes to an end where an expectation runs in a circle', () => {
    const [first, second] = book.operations;
    if (first === undefined || second === undefined) throw new Error('an empty rulebook');
    const circle = [
      { ...first, station: 'floor', requires: [], hides: [], expects: [second.id] },
      { ...second, station: 'floor', requires: [], hides: [], expects: [first.id] },
    ];
    expect(layOut({ ...book, operations: circle }).boxes.size).toBe(2);
  });
});

describe('a name in its box', () => {
  it.each([
    ['Wired', ['Wired']],
    ['Bottom board and floor insulation laid', ['Bottom board and floor', 'insulation laid']],
    ['Roof-to-wall straps nailed at every truss bearing', ['Roof-to-wall straps', 'nailed at every truss…']],
    ['Unterputzsteckdosendeckel', ['Unterputzsteckdosendec', 'kel']],
  ])('“%s” is parted between words, in two lines at most', (name, lines) => {
    expect(inLines(name)).toStrictEqual(lines);
  });
});
