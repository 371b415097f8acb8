import { defectSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import type { FullDefectRow } from '@libs/views';
import type { Names } from '../names';
import type { Asked } from './asked';

export type FullDefect = AnswerOf<'openDefects'>['defects'][number];

/** More than a plant mends in a month; a class narrows it. */
const DEFECTS_SHOWN = 500;

/** Open or reworked and not yet verified, the oldest first. */
export const openDefectsQuestion =
  ({ views, names }: Asked) =>
  async (ofClass: string | null): Promise<AnswerOf<'openDefects'>> => {
    const rows = await views.openDefects(ofClass, DEFECTS_SHOWN);
    return { defects: rows.map((row) => fullDefect(row, names.current())) };
  };

export const fullDefect = ({ characteristic, ...row }: FullDefectRow, names: Names): FullDefect => ({
  defect: row.defect,
  serial: row.serial,
  home: row.home,
  class: row.class,
  state: row.state,
  severity: row.severity,
  disposition: row.disposition,
  agency: row.agency,
  component: row.component,
  symptom: row.symptom,
  place: row.place,
  foundAt: row.foundAt,
  operation: row.operation,
  charged: row.charged,
  occurredAt: row.occurredAt,
  says: defectSays({ ...row, ...(characteristic === null ? {} : { characteristic }) }, names),
});
