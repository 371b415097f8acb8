import type { Sql } from '@libs/ledger';
import type { Days } from '../reader';
import type { SectionCard } from '../section-card/section-card';
import { unfolded } from './statements';

type Row = { readonly detail: string };

/** What this library wrote itself is not validated again. */
const parsed = (rows: readonly Row[]): readonly SectionCard[] =>
  rows.map(({ detail }) => JSON.parse(detail) as SectionCard);

const CARD = `SELECT d.detail AS detail FROM view_section_card c
  JOIN view_detail d ON d.view = 'section-card' AND d.key = c.key`;

export const cards = async (sql: Sql, stages: readonly string[]): Promise<readonly SectionCard[]> =>
  parsed(
    await sql.query<Row>(
      `${CARD} WHERE c.kind = 'section' AND c.stage IN (SELECT entry.value->>0 FROM ${unfolded(sql.dialect)})
       ORDER BY c.serial`,
      [JSON.stringify(stages.map((stage) => [stage]))],
    ),
  );

export const homesLike = async (sql: Sql, search: string, limit: number): Promise<readonly SectionCard[]> =>
  parsed(
    await sql.query<Row>(
      `${CARD} WHERE c.home IN (
         SELECT DISTINCT home FROM view_section_card WHERE sought LIKE $1 ESCAPE '!' ORDER BY home DESC LIMIT $2)
       ORDER BY c.home DESC, c.serial`,
      [pattern(search), limit],
    ),
  );

export const homesLikeCount = async (sql: Sql, search: string): Promise<number> => {
  const [row] = await sql.query<{ readonly homes: number | string }>(
    `SELECT COUNT(DISTINCT home) AS homes FROM view_section_card WHERE sought LIKE $1 ESCAPE '!'`,
    [pattern(search)],
  );
  return Number(row?.homes ?? 0);
};

const pattern = (search: string): string => `%${search.trim().toLowerCase().replace(/[!%_]/g, '!$&')}%`;

export const heldCards = async (sql: Sql): Promise<readonly SectionCard[]> =>
  parsed(await sql.query<Row>(`${CARD} WHERE c.held > 0 ORDER BY c.serial`));

export const cardsOfHome = async (sql: Sql, home: string): Promise<readonly SectionCard[]> =>
  parsed(await sql.query<Row>(`${CARD} WHERE c.home = $1 ORDER BY c.serial`, [home]));

export const labelledBetween = async (sql: Sql, { from, to }: Days): Promise<readonly SectionCard[]> =>
  parsed(await sql.query<Row>(`${CARD} WHERE c.label_day BETWEEN $1 AND $2 ORDER BY c.serial`, [from, to]));
