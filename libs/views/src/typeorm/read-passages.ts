import type { Sql } from '@libs/ledger';
import { inList } from '../passages/passages.view';
import type { Days, PassageFilter, PassageRow, WhichPassages, YieldSums } from '../reader';
import { byName, sum } from './read-yields';
import type { SumsRow } from './read-yields';

const WHICH: { readonly [which in WhichPassages]: string } = {
  left: '',
  nonconforming: 'AND p.clean = 0',
  escaped: 'AND p.clean = 1 AND p.clean_with_escapes = 0',
  incomplete: 'AND p.complete = 0',
};

type Asked = {
  readonly station: string;
  readonly which: WhichPassages;
  readonly filter: PassageFilter;
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
  { station, which, filter, days, limit }: Asked,
): Promise<readonly PassageRow[]> => {
  const wanted = wantedOf(sql, filter, [station, days.from, days.to, limit]);
  const rows = await sql.query<StoredPassage>(
    `SELECT p.serial AS serial, p.home AS home, p.station AS station, p.entered_at AS "enteredAt",
       p.left_at AS "leftAt", p.clean AS clean, p.clean_with_escapes AS "cleanWithEscapes",
       p.complete AS complete, p.nonconformances AS nonconformances
     FROM view_passage AS p WHERE p.station = $1 AND p.left_day BETWEEN $2 AND $3 ${WHICH[which]} ${wanted.where}
     ORDER BY p.left_day DESC, p.left_at DESC, p.serial LIMIT $4`,
    wanted.parameters,
  );
  return rows.map((row) => ({
    ...row,
    clean: row.clean === 1,
    cleanWithEscapes: row.cleanWithEscapes === 1,
    complete: row.complete === 1,
  }));
};

const SUMS = [
  'CAST(COUNT(*) AS integer) AS "left"',
  sum('p.clean', 'clean'),
  sum('p.clean_with_escapes', 'cleanWithEscapes'),
  sum('p.complete', 'complete'),
  sum('p.mended', 'mended'),
  sum('p.nonconformances', 'nonconformances'),
  sum('p.punch', 'punch'),
  sum('p.shortages', 'shortages'),
  sum('p.records', 'records'),
].join(', ');

/** Counters would need one for every way of choosing; the passages of a span are few, and are found by station and day. */
export const yieldOf = async (
  sql: Sql,
  { from, to }: Days,
  filter: PassageFilter,
): Promise<ReadonlyMap<string, YieldSums>> => {
  const wanted = wantedOf(sql, filter, [from, to]);
  return byName(
    await sql.query<SumsRow>(
      `SELECT s.station AS name, ${SUMS}
       FROM (SELECT DISTINCT station FROM view_station_yield WHERE day BETWEEN $1 AND $2) AS s
       CROSS JOIN view_passage AS p
       WHERE p.station = s.station AND p.left_day BETWEEN $1 AND $2 ${wanted.where} GROUP BY s.station`,
      wanted.parameters,
    ),
  );
};

export const models = async (sql: Sql, station: string, { from, to }: Days): Promise<readonly string[]> => {
  const rows = await sql.query<{ readonly model: string }>(
    `SELECT DISTINCT model FROM view_passage WHERE station = $1 AND left_day BETWEEN $2 AND $3 ORDER BY model`,
    [station, from, to],
  );
  return rows.map(({ model }) => model);
};

type Wanted = { readonly where: string; readonly parameters: readonly (string | number)[] };

const wantedOf = (sql: Sql, filter: PassageFilter, given: readonly (string | number)[]): Wanted => {
  const parameters = [...given];
  const next = (value: string): string => `CAST($${parameters.push(value)} AS text)`;
  const where = [
    filter.model === undefined ? '' : `AND p.model = ${next(filter.model)}`,
    filter.crew === undefined ? '' : `AND ${within(sql, 'p.crews', next(inList(filter.crew)))}`,
    designedAs(sql, filter, next),
    leftBetween(filter, next),
  ];
  return { where: where.join(' '), parameters };
};

/** Case counts, which it would not with LIKE on SQLite; nor has a code wildcards. */
export const within = (sql: Sql, column: string, words: string): string =>
  `${sql.dialect === 'sqlite' ? 'instr' : 'strpos'}(${column}, ${words}) > 0`;

type Next = (value: string) => string;

/** A design is kept as canonical JSON, in which an attribute and its value can be written in one way only. */
const designedAs = (sql: Sql, { attribute, value }: PassageFilter, next: Next): string => {
  if (attribute === undefined || value === undefined) return '';
  const written = `${JSON.stringify(attribute)}:${JSON.stringify(value)}`;
  return `AND EXISTS (SELECT 1 FROM view_unit_design AS d
    WHERE d.key = substr(p.key, 1, length(p.key) - length(p.station) - 1) AND ${within(sql, 'd.design', next(written))})`;
};

const leftBetween = ({ leftFrom, leftTo }: PassageFilter, next: Next): string => {
  if (leftFrom === undefined || leftTo === undefined) return '';
  const both = leftFrom <= leftTo ? 'AND' : 'OR';
  return `AND (p.left_time >= ${next(leftFrom)} ${both} p.left_time < ${next(leftTo)})`;
};
