import type { Sql } from '@libs/ledger';
import type { CounterTable, RowTable } from '../view';
import { tableName } from './tables';

type Dialect = Sql['dialect'];

/**
 * Every statement takes one parameter: a JSON array with an array for each row. Both engines unfold it themselves, so
 * a batch is one statement of unchanging text, and no limit on the number of parameters is met.
 */
export const unfolded = (dialect: Dialect): string =>
  dialect === 'postgres' ? 'json_array_elements($1::json) AS entry(value)' : 'json_each($1) AS entry';

const cellAt = (index: number, kind: 'text' | 'whole'): string =>
  kind === 'text' ? `entry.value->>${index}` : `CAST(entry.value->>${index} AS integer)`;

export const loadDetails = (dialect: Dialect): string =>
  `SELECT d.view AS view, d.key AS key, d.detail AS detail FROM ${unfolded(dialect)}
   JOIN view_detail d ON d.view = entry.value->>0 AND d.key = entry.value->>1`;

/**
 * Details go over as one block of bytes, cut up by offsets: escaped into JSON once more, and taken out of it again,
 * they would cost more than writing them. PostgreSQL takes lists as they are.
 */
export const PUT_DETAILS: { readonly [dialect in Dialect]: string } = {
  postgres: `INSERT INTO view_detail (view, key, detail)
    SELECT * FROM unnest($1::text[], $2::text[], $3::text[])
    ON CONFLICT (view, key) DO UPDATE SET detail = excluded.detail`,
  // SQLite needs a WHERE between a SELECT and ON CONFLICT, or it takes ON for a join's.
  sqlite: `INSERT INTO view_detail (view, key, detail)
    SELECT value->>0, value->>1, CAST(substr($2, value->>2, value->>3) AS TEXT) FROM json_each($1) WHERE true
    ON CONFLICT (view, key) DO UPDATE SET detail = excluded.detail`,
};

export const putRows = (table: string, { columns }: RowTable, dialect: Dialect): string => {
  const names = Object.keys(columns);
  const cells = Object.values(columns).map((kind, index) => cellAt(index + 1, kind));
  return `INSERT INTO ${tableName(table)} (key, ${names.join(', ')})
    SELECT ${[cellAt(0, 'text'), ...cells].join(', ')} FROM ${unfolded(dialect)} WHERE true
    ON CONFLICT (key) DO UPDATE SET ${names.map((name) => `${name} = excluded.${name}`).join(', ')}`;
};

export const dropRows = (table: string, dialect: Dialect): string =>
  `DELETE FROM ${tableName(table)} WHERE key IN (SELECT entry.value->>0 FROM ${unfolded(dialect)})`;

export const addCounts = (table: string, { parts, numbers }: CounterTable, dialect: Dialect): string => {
  const name = tableName(table);
  const cells = [
    ...parts.map((_part, index) => cellAt(index, 'text')),
    ...numbers.map((_number, index) => cellAt(parts.length + index, 'whole')),
  ];
  return `INSERT INTO ${name} (${[...parts, ...numbers].join(', ')})
    SELECT ${cells.join(', ')} FROM ${unfolded(dialect)} WHERE true
    ON CONFLICT (${parts.join(', ')}) DO UPDATE SET
    ${numbers.map((number) => `${number} = ${name}.${number} + excluded.${number}`).join(', ')}`;
};

/** A sum that came down to nothing is no row: a rebuild would not have made it. */
export const dropEmptyCounts = (table: string, { parts, numbers }: CounterTable, dialect: Dialect): string =>
  `DELETE FROM ${tableName(table)} WHERE ${numbers.map((number) => `${number} = 0`).join(' AND ')}
   AND ${parts[0] ?? ''} IN (SELECT entry.value->>0 FROM ${unfolded(dialect)})`;
