import type { Sql } from '@libs/ledger';
import type { Days, DefectFilter, DefectRow, DefectsBy, DefectTally, FullDefectRow } from '../reader';

/** The parts each way of counting keeps apart. */
const PARTS: { readonly [by in DefectsBy]: readonly string[] } = {
  code: ['component', 'symptom'],
  component: ['component'],
  symptom: ['symptom'],
  station: ['charged'],
  operation: ['operation'],
};

type Asked = {
  readonly by: DefectsBy;
  readonly station: string | null;
  readonly class: string;
  readonly days: Days;
};
type TallyRow = {
  readonly component?: string;
  readonly symptom?: string;
  readonly charged?: string;
  readonly operation?: string;
  readonly count: number;
};

export const defectTallies = async (sql: Sql, asked: Asked): Promise<readonly DefectTally[]> => {
  const parts = PARTS[asked.by].join(', ');
  const rows = await sql.query<TallyRow>(
    `SELECT ${parts}, CAST(SUM(defects) AS integer) AS count FROM view_defect_count
     WHERE day BETWEEN $1 AND $2 AND class = $3 AND (CAST($4 AS text) IS NULL OR charged = $4) GROUP BY ${parts}`,
    [asked.days.from, asked.days.to, asked.class, asked.station],
  );
  return rows.map(({ component = '', symptom = '', charged = '', operation = '', count }) => ({
    component,
    symptom,
    station: charged,
    operation,
    count,
  }));
};

/** Each filter by the column it looks at. */
const COLUMNS: { readonly [filter in keyof DefectFilter]-?: string } = {
  station: 'charged',
  serial: 'serial',
  component: 'component',
  symptom: 'symptom',
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
    return value === null ? [] : [`AND ${column} = $${parameters.push(value)}`];
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
