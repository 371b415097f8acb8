import { weeklyReportFile } from '@libs/packet';
import type { WeeklyLanguage, WeeklyStation } from '@libs/packet';
import { PLANT } from '@libs/record';
import type { Asked } from '../questions/asked';
import { addDays, daysOf } from '../questions/days';
import { defectCountsQuestion } from '../questions/defect-counts';
import { GOVERNING } from '../questions/governing';
import { stationChartQuestion } from '../questions/station-chart';
import { yieldQuestion } from '../questions/yield';

/** A quarter: the chart then has as many weeks as a page is wide. */
const WEEKS = 13;
const DEFECTS_SHOWN = 4;

/** The weekly report up to a day (null: the last on record), as a PDF: one page a station. */
export const weeklyReport =
  (asked: Asked) =>
  async (upTo: string | null, language: WeeklyLanguage): Promise<{ to: string; bytes: Uint8Array }> => {
    const { to } = await daysOf({ from: null, to: upTo }, asked);
    const days = { from: addDays(to, 1 - WEEKS * 7), to };
    const yields = await yieldQuestion(asked)(days);
    const { opened } = await asked.ledger.state(PLANT, 'plant');
    const stations: WeeklyStation[] = [];
    let budget = { falseAlarmsPerMonth: 0, charts: 0 };
    for (const row of yields.rows) {
      const chart = await stationChartQuestion(asked)(row.station, days);
      const only = { station: row.station, class: 'nonconformance' };
      const defects = await defectCountsQuestion(asked)('code', only, days);
      budget = chart.budget;
      stations.push({
        ...row,
        interval: row.firstPassInterval,
        kind: chart.weekly.kind,
        points: chart.weekly.points,
        alarms: chart.unit?.alarms ?? [],
        defects: defects.rows.slice(0, DEFECTS_SHOWN),
        found: chart.found,
        notes: chart.annotations.filter(({ day }) => day >= days.from && day <= days.to),
      });
    }
    const { position, rolled } = yields;
    const report = {
      plant: opened?.name ?? '',
      ...days,
      position,
      budget,
      rolled,
      governing: GOVERNING,
      stations,
    };
    return { to, bytes: await weeklyReportFile(report, language) };
  };
