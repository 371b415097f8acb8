import type { Sql } from '@libs/ledger';
import type { Days, FoundRow, StationDay } from '../reader';

export const yieldByStationDay = (sql: Sql, { from, to }: Days): Promise<readonly StationDay[]> =>
  sql.query<StationDay>(
    `SELECT station, day, CAST(SUM(sections) AS integer) AS "left", CAST(SUM(clean) AS integer) AS clean
     FROM view_station_yield WHERE day BETWEEN $1 AND $2 GROUP BY station, day ORDER BY station, day`,
    [from, to],
  );

/**
 * One row a station, whatever left it: the database puts the marks in a row, a few bytes a section. The stations come
 * from the counters of the span, so that each is looked up in the index by itself: to read the index of all stations
 * and leave out the days outside would cost the whole history.
 */
const STATIONS = '(SELECT DISTINCT station FROM view_station_yield WHERE day BETWEEN $1 AND $2) AS s';
const JOINED = {
  // CROSS JOIN: SQLite then keeps to this order of the tables.
  sqlite: `SELECT station, group_concat(clean, '') AS marks FROM
      (SELECT s.station AS station, p.clean AS clean FROM ${STATIONS} CROSS JOIN view_passage AS p
       WHERE p.station = s.station AND p.left_day BETWEEN $1 AND $2 WHICH
       ORDER BY s.station, p.left_day, p.left_at, p.serial)
    GROUP BY station`,
  postgres: `SELECT s.station AS station,
      string_agg(p.clean::text, '' ORDER BY p.left_day, p.left_at, p.serial) AS marks
    FROM ${STATIONS} JOIN view_passage AS p ON p.station = s.station AND p.left_day BETWEEN $1 AND $2 WHICH
    GROUP BY s.station`,
} as const;

export const runs = async (
  sql: Sql,
  station: string | null,
  { from, to }: Days,
): Promise<ReadonlyMap<string, string>> => {
  const statement = JOINED[sql.dialect].replace('WHICH', station === null ? '' : 'AND s.station = $3');
  const rows = await sql.query<{ readonly station: string; readonly marks: string }>(
    statement,
    station === null ? [from, to] : [from, to, station],
  );
  return new Map(rows.map((row) => [row.station, row.marks]));
};

/** By the day it was found; a defect's own row knows the section, and the section's passage when it left. */
export const found = (sql: Sql, station: string, { from, to }: Days): Promise<readonly FoundRow[]> =>
  sql.query<FoundRow>(
    `SELECT d.found_at AS "foundAt", d.occurred_at AS "occurredAt", p.left_at AS "leftAt"
     FROM view_defect d LEFT JOIN view_passage p
       ON p.key = substr(d.key, 1, length(d.key) - length(d.defect)) || d.charged
     WHERE d.charged = $1 AND d.day BETWEEN $2 AND $3 AND d.class = 'nonconformance'
     ORDER BY d.day, d.position`,
    [station, from, to],
  );
