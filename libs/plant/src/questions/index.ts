import { openAlarms } from '../alarms';
import { weeklyReport } from '../packets/weekly-report';
import { drawSample } from '../audit/sample';
import type { Questions } from './questions';
import type { Asked } from './asked';
import { agencyQuestion } from './agency';
import { agencyReportQuestion } from './agency-report';
import { claimQuestion, claimsQuestion } from '../claims/asking';
import { determinationQuestion, determinationsQuestion, dueDaysQuestion } from '../claims/files';
import { exposureQuestion, traceQuestion } from '../claims/tracing';
import { buildBookQuestion } from './build-book';
import { containmentsQuestion, sharingQuestion } from './containment';
import { dataPlateQuestion } from './data-plate';
import { defectCountsQuestion } from './defect-counts';
import { defectsQuestion } from './defects';
import { equipmentQuestion } from './equipment';
import { fieldQuestion } from './field';
import { historyQuestion } from './history';
import { holdsQuestion } from './holds';
import { homesQuestion } from './homes';
import { kitQuestion } from './kit';
import { labelLogQuestion } from './label-log';
import { lineQuestion } from './line';
import { openDefectsQuestion } from './open-defects';
import { passagesQuestion } from './passages';
import { plantQuestion } from './plant';
import { instrumentReachQuestion, lotReachQuestion } from './reach';
import { releasesQuestion, sectionReleaseQuestion } from './release';
import { sectionQuestion } from './section';
import { siteQuestion } from './site';
import { siteWorkQuestion } from './site-work';
import { signalsQuestion } from './signals';
import { stationChartQuestion } from './station-chart';
import { yieldQuestion } from './yield';
import { yieldTrendQuestion } from './yield-trend';

export type { Asked } from './asked';
export { GOVERNING } from './governing';
export { eventsMentioning, quarantinedLots, streamsOf } from './streams';
export { eventId, leafHex } from './event-identity';

/** Everything the plant can be asked, one file a question. */
export const questionsOf = (asked: Asked): Questions => ({
  plant: plantQuestion(asked),
  line: lineQuestion(asked),
  section: sectionQuestion(asked),
  kit: kitQuestion(asked),
  homes: homesQuestion(asked),
  auditSample: drawSample(asked.views),
  history: historyQuestion(asked),
  yieldByStation: yieldQuestion(asked),
  yieldTrend: yieldTrendQuestion(asked),
  signals: signalsQuestion(asked),
  field: fieldQuestion(asked),
  openAlarms: openAlarms(asked),
  weeklyReport: weeklyReport(asked),
  stationChart: stationChartQuestion(asked),
  passages: passagesQuestion(asked),
  defectCounts: defectCountsQuestion(asked),
  defects: defectsQuestion(asked),
  openDefects: openDefectsQuestion(asked),
  holds: holdsQuestion(asked),
  agency: agencyQuestion(asked),
  agencyReport: agencyReportQuestion(asked),
  releases: releasesQuestion(asked),
  sectionRelease: sectionReleaseQuestion(asked),
  labelLog: labelLogQuestion(asked),
  dataPlate: dataPlateQuestion(asked),
  sharing: sharingQuestion(asked),
  containments: containmentsQuestion(asked),
  site: siteQuestion(asked),
  buildBook: buildBookQuestion(asked),
  siteWork: siteWorkQuestion(asked),
  claims: claimsQuestion(asked),
  claim: claimQuestion(asked),
  trace: traceQuestion(asked),
  exposure: exposureQuestion(asked),
  determinations: determinationsQuestion(asked),
  determination: determinationQuestion(asked),
  dueDays: dueDaysQuestion(asked),
  equipment: equipmentQuestion(asked),
  instrumentReach: instrumentReachQuestion(asked),
  lotReach: lotReachQuestion(asked),
});
