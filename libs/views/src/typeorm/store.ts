import type { Sql } from '@libs/ledger';
import { handle } from '../at-hand';
import type { AtHand, Wanted } from '../at-hand';
import type { Changes, Detail, Sum } from '../change';
import type { AnyView, CounterTable, RowTable } from '../view';
import { addCounts, dropEmptyCounts, dropRows, loadDetails, PUT_DETAILS, putRows } from './statements';

/** Rows a statement takes. More would hold a long text in memory twice, and gain nothing. */
const ROWS_A_STATEMENT = 2_000;

/** The details wanted, by name: from memory, else from the table. Those that have none are left out. */
export const gather = async (
  wanted: ReadonlyMap<string, Wanted>,
  atHand: AtHand,
  sql: Sql,
): Promise<ReadonlyMap<string, unknown>> => {
  const details = new Map<string, unknown>();
  const missing: Wanted[] = [];
  for (const [name, want] of wanted) {
    const found = atHand.find(name);
    if (found !== undefined) details.set(name, found.detail);
    else if (!want.isNew) missing.push(want);
  }
  return missing.length === 0 ? details : new Map([...details, ...(await load(missing, sql))]);
};

const load = async (wanted: readonly Wanted[], sql: Sql): Promise<ReadonlyMap<string, unknown>> => {
  const found = new Map<string, unknown>();
  const views = new Map(wanted.map(({ view }) => [view.name, view]));
  for (const some of inSlices(wanted.map(({ view, key }) => [view.name, key]))) {
    const rows = await sql.query<Detail>(loadDetails(sql.dialect), [JSON.stringify(some)]);
    for (const { view, key, detail } of rows) {
      const known = views.get(view);
      if (known !== undefined) found.set(handle(known, key), JSON.parse(detail));
    }
  }
  return found;
};

/** Writes the changes: one statement a table, for as many rows as there are. */
export const write = async (changes: Changes, views: readonly AnyView[], sql: Sql): Promise<void> => {
  await putDetails(changes.details, sql);
  for (const view of views) {
    for (const [table, shape] of Object.entries(view.rowTables)) await writeRows(table, shape, changes, sql);
    for (const [table, shape] of Object.entries(view.counterTables)) {
      await writeCounts(table, shape, [...(changes.counts.get(table)?.values() ?? [])], sql);
    }
  }
};

export const putDetails = async (details: readonly Detail[], sql: Sql): Promise<void> => {
  for (const some of inSlices(details)) {
    await sql.query(PUT_DETAILS[sql.dialect], sql.dialect === 'postgres' ? listed(some) : cut(some));
  }
};

const listed = (details: readonly Detail[]): readonly unknown[] => [
  details.map(({ view }) => view),
  details.map(({ key }) => key),
  details.map(({ detail }) => detail),
];

const cut = (details: readonly Detail[]): readonly unknown[] => {
  const bytes = details.map(({ detail }) => Buffer.from(detail));
  let start = 1;
  const cuts = details.map(({ view, key }, index) => {
    const length = bytes[index]?.length ?? 0;
    start += length;
    return [view, key, start - length, length];
  });
  return [JSON.stringify(cuts), Buffer.concat(bytes)];
};

const writeRows = async (table: string, shape: RowTable, changes: Changes, sql: Sql): Promise<void> => {
  const columns = Object.keys(shape.columns);
  const rows = changes.rows.get(table) ?? [];
  await put(
    putRows(table, shape, sql.dialect),
    rows.map(({ key, cells }) => [key, ...columns.map((column) => cells[column] ?? null)]),
    sql,
  );
  await put(
    dropRows(table, sql.dialect),
    (changes.gone.get(table) ?? []).map((key) => [key]),
    sql,
  );
};

const writeCounts = async (
  table: string,
  shape: CounterTable,
  sums: readonly Sum[],
  sql: Sql,
): Promise<void> => {
  const moved = sums.filter(({ numbers }) => numbers.some((number) => number !== 0));
  await put(
    addCounts(table, shape, sql.dialect),
    moved.map(({ parts, numbers }) => [...parts, ...numbers]),
    sql,
  );
  const lowered = moved.filter(({ numbers }) => numbers.some((number) => number < 0));
  await put(
    dropEmptyCounts(table, shape, sql.dialect),
    lowered.map(({ parts }) => [parts[0] ?? '']),
    sql,
  );
};

const put = async (
  statement: string,
  rows: readonly (readonly (string | number | null)[])[],
  sql: Sql,
): Promise<void> => {
  for (const some of inSlices(rows)) await sql.query(statement, [JSON.stringify(some)]);
};

const inSlices = <T>(all: readonly T[]): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(all.length / ROWS_A_STATEMENT) }, (_slice, index) =>
    all.slice(index * ROWS_A_STATEMENT, (index + 1) * ROWS_A_STATEMENT),
  );
