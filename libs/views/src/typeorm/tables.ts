import type { Sql } from '@libs/ledger';
import type { AnyView, CounterTable, Kind, RowTable } from '../view';

type Dialect = Sql['dialect'];

/** Text compares byte by byte on both engines, whatever the database's own language is. */
const text = (dialect: Dialect): string => (dialect === 'postgres' ? 'text COLLATE "C"' : 'text');
const typeOf = (kind: Kind, dialect: Dialect): string => (kind === 'text' ? text(dialect) : 'integer');

export const tableName = (table: string): string => `view_${table}`;

/** Rows are found by their key and nothing else, so SQLite needs no number of its own for each. */
const byKey = (dialect: Dialect): string => (dialect === 'sqlite' ? ' WITHOUT ROWID' : '');

/** Details of all views, so that a batch loads and writes them with one statement each. */
export const createDetails = (dialect: Dialect): string =>
  `CREATE TABLE IF NOT EXISTS view_detail (view ${text(dialect)} NOT NULL, key ${text(dialect)} NOT NULL,
     detail text NOT NULL, PRIMARY KEY (view, key))${byKey(dialect)}`;

/** A view's tables are disposable: what was there under another version goes. */
export const createFor = (view: AnyView, dialect: Dialect): readonly string[] => [
  ...dropFor(view),
  ...Object.entries(view.rowTables).flatMap(([table, shape]) => createRows(table, shape, dialect)),
  ...Object.entries(view.counterTables).map(([table, shape]) => createCounts(table, shape, dialect)),
];

const dropFor = (view: AnyView): readonly string[] => [
  `DELETE FROM view_detail WHERE view = '${view.name}'`,
  ...[...Object.keys(view.rowTables), ...Object.keys(view.counterTables)].map(
    (table) => `DROP TABLE IF EXISTS ${tableName(table)}`,
  ),
];

const createRows = (table: string, { columns, indexes }: RowTable, dialect: Dialect): readonly string[] => [
  `CREATE TABLE ${tableName(table)} (key ${text(dialect)} PRIMARY KEY, ${Object.entries(columns)
    .map(([column, kind]) => `${column} ${typeOf(kind, dialect)}`)
    .join(', ')})${byKey(dialect)}`,
  ...indexes.map(
    (columnsOfIndex) =>
      `CREATE INDEX ${tableName(table)}_${columnsOfIndex.join('_')} ON ${tableName(table)} (${columnsOfIndex.join(', ')})`,
  ),
];

const createCounts = (table: string, { parts, numbers }: CounterTable, dialect: Dialect): string =>
  `CREATE TABLE ${tableName(table)} (${[
    ...parts.map((part) => `${part} ${text(dialect)} NOT NULL`),
    ...numbers.map((number) => `${number} integer NOT NULL`),
    `PRIMARY KEY (${parts.join(', ')})`,
  ].join(', ')})${byKey(dialect)}`;
