import type { Questions } from '../plant';
import type { Asked } from './asked';
import { defectCountsQuestion } from './defect-counts';
import { defectsQuestion } from './defects';
import { historyQuestion } from './history';
import { homesQuestion } from './homes';
import { lineQuestion } from './line';
import { passagesQuestion } from './passages';
import { plantQuestion } from './plant';
import { sectionQuestion } from './section';
import { yieldQuestion } from './yield';
import { yieldTrendQuestion } from './yield-trend';

export type { Asked } from './asked';
export { GOVERNING } from './governing';
export { eventId, leafHex } from './event-identity';

/** Everything the plant can be asked, one file a question. */
export const questionsOf = (asked: Asked): Questions => ({
  plant: plantQuestion(asked),
  line: lineQuestion(asked),
  section: sectionQuestion(asked),
  homes: homesQuestion(asked),
  history: historyQuestion(asked),
  yieldByStation: yieldQuestion(asked),
  yieldTrend: yieldTrendQuestion(asked),
  passages: passagesQuestion(asked),
  defectCounts: defectCountsQuestion(asked),
  defects: defectsQuestion(asked),
});
