import type { Sql } from '@libs/ledger';
import { inList } from '../passages/passages.view';
import { within } from './read-passages';
import type { Days, DefectFilter, DefectRow, DefectsBy, DefectTally, FullDefectRow } from '../reader';

/** The parts each way of counting keeps apart. */
const PARTS: { readonly [by in DefectsBy]: readonly string[] } = {
  code: ['component', 'symptom'],
  component: ['component'],
  symptom: ['symptom'],
  station: ['charged'],
  operation: ['operation'],
  crew: ['crew'],
  lot: ['lot'],
};

type Asked = {
  readonly by: DefectsBy;
  readonly station: string | null;
  readonly class: string;
  /** Apart by component and symptom too: what a defect costs depends on them. */
  readonly byCode?: boolean;
  readonly days: Days;
};
type TallyRow = {
  readonly component?: string;
  readonly symptom?: string;
  readonly charged?: string;
  readonly operation?: string;
  readonly crew?: string;
  readonly lot?: string;
  readonly count: number;
};

export const defectTallies = async (sql: Sql, asked: Asked): Promise<readonly DefectTally[]> => {
  const parts = [...new Set([...PARTS[asked.by], ...(asked.byCode ? PARTS.code : [])])].join(', ');
  const table = asked.by === 'lot' ? 'view_defect_lot_count' : 'view_defect_count';
  const rows = await sql.query<TallyRow>(
    `SELECT ${parts}, CAST(SUM(defects) AS integer) AS count FROM ${table}
     WHERE day BETWEEN $1 AND $2 AND class = $3 AND (CAST($4 AS text) IS NULL OR charged = $4) GROUP BY ${parts}`,
    [asked.days.from, asked.days.to, asked.class, asked.station],
  );
  return rows.map(
    ({ component = '', symptom = '', charged = '', operation = '', crew = '', lot = '', count }) => ({
      component,
      symptom,
      station: charged,
      operation,
      crew,
      lot,
      count,
    }),
  );
};

/** Each filter by the column it looks at. */
const COLUMNS: { readonly [filter in keyof DefectFilter]-?: string } = {
  station: 'charged',
  serial: 'serial',
  component: 'component',
  symptom: 'symptom',
  operation: 'operation',
  crew: 'made_by',
  lot: 'lots',
  class: 'class',
};

type Flags = { readonly escaped: number; readonly agency: number };
type StoredDefect = Omit<FullDefectRow, keyof Flags> & Flags;

export const defects = async (
  sql: Sql,
  only: DefectFilter,
  { from, to }: Days,
  limit: number,
): Promise<readonly DefectRow[]> => {
  const parameters: (string | number)[] = [from, to, limit];
  const wanted = Object.entries(COLUMNS).flatMap(([filter, column]) => {
    const value = valueOf(only, filter);
    if (value === null) return [];
    return column === 'lots'
      ? [`AND ${within(sql, 'lots', `CAST($${parameters.push(inList(value))} AS text)`)}`]
      : [`AND ${column} = $${parameters.push(value)}`];
  });
  const rows = await sql.query<StoredDefect>(
    `${DEFECT} WHERE day BETWEEN $1 AND $2 ${wanted.join(' ')}
     ORDER BY day DESC, position DESC LIMIT $3`,
    parameters,
  );
  return rows.map(plain);
};

const DEFECT = `SELECT defect, serial, home, class, component, symptom, characteristic, place, found_at AS "foundAt",
  operation, charged, state, escaped, occurred_at AS "occurredAt", recorded_at AS "recordedAt", severity, disposition,
  agency FROM view_defect`;

const flagged = (row: StoredDefect): FullDefectRow => ({
  ...row,
  escaped: row.escaped === 1,
  agency: row.agency === 1,
});

const plain = (row: StoredDefect): DefectRow => {
  const { severity: _severity, disposition: _disposition, agency: _agency, ...rest } = flagged(row);
  return rest;
};

export const openDefects = async (
  sql: Sql,
  ofClass: string | null,
  limit: number,
): Promise<readonly FullDefectRow[]> => {
  const rows = await sql.query<StoredDefect>(
    `${DEFECT} WHERE state IN ('open', 'reworked') AND (CAST($1 AS text) IS NULL OR class = $1)
     ORDER BY position LIMIT $2`,
    [ofClass, limit],
  );
  return rows.map(flagged);
};

export const agencyDefects = async (sql: Sql, { from, to }: Days): Promise<readonly FullDefectRow[]> => {
  const rows = await sql.query<StoredDefect>(
    `${DEFECT} WHERE agency = 1 AND day BETWEEN $1 AND $2 ORDER BY day DESC, position DESC`,
    [from, to],
  );
  return rows.map(flagged);
};

const valueOf = (only: DefectFilter, filter: string): string | null => {
  const values: { readonly [filter: string]: string | null | undefined } = only;
  return values[filter] ?? null;
};
