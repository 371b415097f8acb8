import { defectSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import type { DefectRow } from '@libs/views';
import type { Names } from '../names';

export type DefectCard = AnswerOf<'defects'>['defects'][number];

export const defectCard = ({ home: _home, characteristic, ...row }: DefectRow, names: Names): DefectCard => ({
  ...row,
  says: defectSays({ ...row, ...(characteristic === null ? {} : { characteristic }) }, names),
});
