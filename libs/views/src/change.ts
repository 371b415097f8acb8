import type { AnyView, Cell, Count, Row } from './view';

/** A detail before and after some events. */
export type Touched = {
  readonly view: AnyView;
  readonly key: string;
  readonly before: unknown;
  /** Replaced with each event, so that a long history makes no garbage of its own. */
  after: unknown;
};

export type Detail = { readonly view: string; readonly key: string; readonly detail: string };

/** What has to be written so that the tables say what the details say. */
export type Changes = {
  /** As JSON text. Views build their details member by member, so that the same detail is the same text. */
  readonly details: Detail[];
  readonly rows: Map<string, { readonly key: string; readonly cells: Row['cells'] }[]>;
  readonly gone: Map<string, string[]>;
  readonly counts: Map<string, Map<string, Sum>>;
};
export type Sum = { readonly parts: readonly string[]; readonly numbers: number[] };

/** The difference between the old details and the new ones: in the details, in their rows and in the sums. */
export const changesOf = (touched: Iterable<Touched>): Changes => {
  const changes: Changes = { details: [], rows: new Map(), gone: new Map(), counts: new Map() };
  for (const each of touched) {
    if (each.after === each.before || each.after === undefined) continue;
    changes.details.push({ view: each.view.name, key: each.key, detail: spelt(each) });
    compareRows(each, changes);
    compareCounts(each, changes);
  }
  return changes;
};

const spelt = ({ view, after }: Touched): string => JSON.stringify(view.stored?.(after) ?? after);

const compareRows = ({ view, key, before, after }: Touched, changes: Changes): void => {
  if (before === undefined) {
    for (const row of view.rows(after, key)) {
      listOf(changes.rows, row.table).push({ key: row.key, cells: row.cells });
    }
    return;
  }
  const old = new Map(view.rows(before, key).map((row) => [nameOf(row), row]));
  for (const row of view.rows(after, key)) {
    const was = old.get(nameOf(row));
    if (was === undefined || !sameCells(was, row)) {
      listOf(changes.rows, row.table).push({ key: row.key, cells: row.cells });
    }
    old.delete(nameOf(row));
  }
  for (const row of old.values()) listOf(changes.gone, row.table).push(row.key);
};

const nameOf = ({ table, key }: Row): string => `${table} ${key}`;

const sameCells = (a: Row, b: Row): boolean => {
  const others: { readonly [column: string]: Cell | undefined } = b.cells;
  return Object.entries(a.cells).every(([column, cell]) => others[column] === cell);
};

const compareCounts = ({ view, before, after }: Touched, changes: Changes): void => {
  for (const count of view.counts(after)) add(count, 1, changes);
  if (before === undefined) return;
  for (const count of view.counts(before)) add(count, -1, changes);
};

const add = ({ table, parts, numbers }: Count, sign: 1 | -1, changes: Changes): void => {
  const sums = changes.counts.get(table) ?? new Map<string, Sum>();
  changes.counts.set(table, sums);
  const name = JSON.stringify(parts);
  const sum = sums.get(name) ?? { parts, numbers: numbers.map(() => 0) };
  sums.set(name, sum);
  for (const [index, number] of numbers.entries())
    sum.numbers[index] = (sum.numbers[index] ?? 0) + sign * number;
};

const listOf = <T>(lists: Map<string, T[]>, name: string): T[] => {
  const list = lists.get(name) ?? [];
  lists.set(name, list);
  return list;
};
