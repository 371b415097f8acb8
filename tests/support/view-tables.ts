import type { Sql } from '@libs/ledger';
import { VIEWS } from '@libs/views';

/** Everything the views have written, in an order of its own, as text: two of these are equal byte for byte or not. */
export const viewTables = async (sql: Sql): Promise<string> => {
  const tables = VIEWS.flatMap(({ rowTables, counterTables }) => [
    ...Object.keys(rowTables),
    ...Object.keys(counterTables),
  ]);
  const lines: string[] = [];
  for (const table of ['detail', ...tables]) {
    const rows = await sql.query<Record<string, unknown>>(`SELECT * FROM view_${table}`);
    lines.push(`${table}: ${rows.length}`, ...rows.map((row) => `${table} ${JSON.stringify(row)}`).sort());
  }
  return lines.join('\n');
};
