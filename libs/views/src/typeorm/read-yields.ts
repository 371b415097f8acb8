import type { Sql } from '@libs/ledger';
import type { Days, YieldSums } from '../reader';

export type SumsRow = YieldSums & { readonly name: string };

/** PostgreSQL sums integers into a wider type, which its driver hands over as text. */
export const sum = (column: string, as: string): string => `CAST(SUM(${column}) AS integer) AS "${as}"`;

const SUMS = [
  sum('sections', 'left'),
  sum('clean', 'clean'),
  sum('clean_with_escapes', 'cleanWithEscapes'),
  sum('complete', 'complete'),
  sum('mended', 'mended'),
  sum('nonconformances', 'nonconformances'),
  sum('punch', 'punch'),
  sum('shortages', 'shortages'),
  sum('records', 'records'),
].join(', ');

export const byName = (rows: readonly SumsRow[]): ReadonlyMap<string, YieldSums> =>
  new Map(rows.map(({ name, ...sums }) => [name, sums]));

export const yieldByStation = async (sql: Sql, { from, to }: Days): Promise<ReadonlyMap<string, YieldSums>> =>
  byName(
    await sql.query<SumsRow>(
      `SELECT station AS name, ${SUMS} FROM view_station_yield WHERE day BETWEEN $1 AND $2 GROUP BY station`,
      [from, to],
    ),
  );

export const yieldByDay = async (
  sql: Sql,
  station: string,
  { from, to }: Days,
): Promise<ReadonlyMap<string, YieldSums>> =>
  byName(
    await sql.query<SumsRow>(
      `SELECT day AS name, ${SUMS} FROM view_station_yield
       WHERE day BETWEEN $1 AND $2 AND station = $3 GROUP BY day ORDER BY day`,
      [from, to, station],
    ),
  );

export const lastDay = async (sql: Sql): Promise<string | null> => {
  const [row] = await sql.query<{ day: string | null }>(
    `SELECT MAX(day) AS day FROM (SELECT MAX(day) AS day FROM view_station_yield
       UNION ALL SELECT MAX(day) AS day FROM view_defect_count) AS days`,
  );
  return row?.day ?? null;
};
