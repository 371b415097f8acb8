import type { Sql } from '@libs/ledger';
import type { Days, PassageRow, WhichPassages, YieldSums } from '../reader';

type SumsRow = YieldSums & { readonly name: string };

/** PostgreSQL sums integers into a wider type, which its driver hands over as text. */
const sum = (column: string, as: string): string => `CAST(SUM(${column}) AS integer) AS "${as}"`;

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

const byName = (rows: readonly SumsRow[]): ReadonlyMap<string, YieldSums> =>
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

const WHICH: { readonly [which in WhichPassages]: string } = {
  left: '',
  nonconforming: 'AND clean = 0',
  escaped: 'AND clean = 1 AND clean_with_escapes = 0',
  incomplete: 'AND complete = 0',
};

type Asked = {
  readonly station: string;
  readonly which: WhichPassages;
  readonly days: Days;
  readonly limit: number;
};
type StoredPassage = Omit<PassageRow, 'clean' | 'cleanWithEscapes' | 'complete'> & {
  readonly clean: number;
  readonly cleanWithEscapes: number;
  readonly complete: number;
};

/** Latest first. */
export const passages = async (
  sql: Sql,
  { station, which, days, limit }: Asked,
): Promise<readonly PassageRow[]> => {
  const rows = await sql.query<StoredPassage>(
    `SELECT serial, home, station, entered_at AS "enteredAt", left_at AS "leftAt", clean,
       clean_with_escapes AS "cleanWithEscapes", complete, nonconformances
     FROM view_passage WHERE station = $1 AND left_day BETWEEN $2 AND $3 ${WHICH[which]}
     ORDER BY left_day DESC, left_at DESC, serial LIMIT $4`,
    [station, days.from, days.to, limit],
  );
  return rows.map((row) => ({
    ...row,
    clean: row.clean === 1,
    cleanWithEscapes: row.cleanWithEscapes === 1,
    complete: row.complete === 1,
  }));
};

export const lastDay = async (sql: Sql): Promise<string | null> => {
  const [row] = await sql.query<{ day: string | null }>(
    `SELECT MAX(day) AS day FROM (SELECT MAX(day) AS day FROM view_station_yield
       UNION ALL SELECT MAX(day) AS day FROM view_defect_count) AS days`,
  );
  return row?.day ?? null;
};
