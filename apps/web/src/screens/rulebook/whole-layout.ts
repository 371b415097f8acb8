import type { Book, BookOperation } from './book';

/** Units of the drawing are CSS pixels: letters are as large as everywhere else. */
export const BOX = { wide: 176, high: 52, gap: 14, row: 36, lane: 20, head: 34, foot: 26 } as const;

export type Drawn = { readonly operation: BookOperation; readonly x: number; readonly y: number };
export type Lane = { readonly crew: string; readonly x: number };
export type Band = {
  readonly station: string;
  readonly y: number;
  readonly high: number;
  readonly lanes: readonly Lane[];
};
export type EdgeKind = 'needs' | 'expects' | 'covers';
export type Edge = { readonly from: string; readonly to: string; readonly is: EdgeKind };
export type Whole = {
  readonly wide: number;
  readonly high: number;
  readonly bands: readonly Band[];
  readonly boxes: ReadonlyMap<string, Drawn>;
  readonly edges: readonly Edge[];
};

/**
 * Stations follow each other downwards, so that a phone begins where the line begins. In a station every crew has a
 * lane of its own: what stands side by side may be worked side by side, and what stands below waits for what is above.
 */
export const layOut = (book: Book): Whole => {
  const edges = edgesOf(book);
  const boxes = new Map<string, Drawn>();
  const bands: Band[] = [];
  let y = 0;
  let wide = 0;
  for (const { id } of book.stations) {
    const here = book.operations.filter(({ station }) => station === id);
    if (here.length === 0) continue;
    const placed = placeStation(here, edges, y + BOX.head + BOX.foot);
    for (const box of placed.boxes) boxes.set(box.operation.id, box);
    const high = placed.bottom - y + BOX.gap;
    bands.push({ station: id, y, high, lanes: placed.lanes });
    wide = Math.max(wide, placed.right);
    y += high + BOX.row;
  }
  return { wide: wide + BOX.lane, high: y, bands, boxes, edges };
};

/** From what comes first to what comes after it. */
export const edgesOf = ({ operations }: Pick<Book, 'operations'>): readonly Edge[] => {
  const known = new Set(operations.map(({ id }) => id));
  const all = operations.flatMap(({ id, requires, expects, hides }): readonly Edge[] => {
    const covered = [...new Set(hides.map(({ operation }) => operation))];
    const needed = requires.map(({ operation }) => operation).filter((one) => !covered.includes(one));
    const edge = (from: string, is: EdgeKind): Edge => ({ from, to: id, is });
    return [
      ...covered.map((from) => edge(from, 'covers')),
      ...needed.map((from) => edge(from, 'needs')),
      ...expects
        .filter((one) => !covered.includes(one) && !needed.includes(one))
        .map((from) => edge(from, 'expects')),
    ];
  });
  return all.filter(({ from, to }) => known.has(from) && from !== to);
};

type Placed = {
  readonly boxes: readonly Drawn[];
  readonly lanes: readonly Lane[];
  readonly right: number;
  readonly bottom: number;
};

const placeStation = (here: readonly BookOperation[], edges: readonly Edge[], top: number): Placed => {
  const ranks = ranksOf(here, edges);
  const boxes: Drawn[] = [];
  const lanes: Lane[] = [];
  let x = BOX.lane;
  for (const crew of new Set(here.map((one) => one.crew))) {
    const filled = new Map<number, number>();
    for (const operation of here.filter((one) => one.crew === crew)) {
      const rank = ranks.get(operation.id) ?? 0;
      const column = filled.get(rank) ?? 0;
      filled.set(rank, column + 1);
      boxes.push({
        operation,
        x: x + column * (BOX.wide + BOX.gap),
        y: top + rank * (BOX.high + BOX.row),
      });
    }
    lanes.push({ crew, x });
    x += Math.max(...filled.values()) * (BOX.wide + BOX.gap) + BOX.lane;
  }
  const bottom = Math.max(...boxes.map((box) => box.y)) + BOX.high;
  return { boxes, lanes, right: x - BOX.gap, bottom };
};

/** How many operations of the same station come one after the other before each. */
const ranksOf = (here: readonly BookOperation[], edges: readonly Edge[]): ReadonlyMap<string, number> => {
  const ids = new Set(here.map(({ id }) => id));
  const inside = edges.filter(({ from, to }) => ids.has(from) && ids.has(to));
  const ranks = new Map<string, number>();
  const rankOf = (id: string, above: ReadonlySet<string>): number => {
    const known = ranks.get(id);
    if (known !== undefined) return known;
    // An expectation may run in a circle with a requirement: it bends back instead of running on for ever.
    const before = inside.filter(({ from, to }) => to === id && !above.has(from));
    const rank = Math.max(0, ...before.map(({ from }) => 1 + rankOf(from, new Set([...above, id]))));
    ranks.set(id, rank);
    return rank;
  };
  for (const { id } of here) rankOf(id, new Set([id]));
  return ranks;
};
