import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DEFAULT_BUDGET, workdaysBetween } from '@libs/quality';
import { delaysAfterDoubling } from './delays';
import { simulatePlants, STATIONS, YEARS } from './plants';
import type { Baseline } from './plants';
import { singleCharts } from './single-charts';

/** npm run run-lengths: simulates, prints, and writes libs/quality/src/RUN-LENGTHS.md. Same seeds, same page. */
const PAGE = join(__dirname, '../../../libs/quality/src/RUN-LENGTHS.md');
const SHARES = [0.005, 0.01, 0.02, 0.03, 0.04, 0.05];

const table = (heads: readonly string[], rows: readonly (readonly string[])[]): string =>
  [heads, heads.map(() => '---'), ...rows].map((row) => `| ${row.join(' | ')} |`).join('\n');

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

const BASELINES: readonly (readonly [string, Baseline])[] = [
  ['known', 'given'],
  ['counted on 400 sections, taken with caution', { units: 400, taken: 'with caution' }],
  ['counted on 400 sections, taken as counted', { units: 400, taken: 'as counted' }],
];

const plants = (): string =>
  table(
    ['budget a month', 'usual shares', 'false alarms a month, mean', 'standard error'],
    [DEFAULT_BUDGET, 1].flatMap((budget) =>
      BASELINES.map(([name, baseline], at) => {
        const { mean, standardError } = simulatePlants(budget, baseline, { plants: 100, seed: 11 + at });
        return [String(budget), name, mean.toFixed(3), standardError.toFixed(3)];
      }),
    ),
  );

const singles = (): string =>
  table(
    ['chart', 'stated', 'simulated', 'standard error'],
    singleCharts(4000, 3).map(({ chart, stated, seen, error }) => [
      chart,
      stated.toFixed(1),
      seen.toFixed(1),
      error.toFixed(1),
    ]),
  );

const delays = (days: number): string =>
  table(
    [
      'usual share, then doubled',
      'weekly p chart, days',
      'unit by unit, days',
      'times as soon',
      'standard error',
    ],
    SHARES.map((share, at) => {
      const found = delaysAfterDoubling(share, days, { runs: 20_000, seed: 100 + at });
      const ratio = found.weekly / found.unitByUnit;
      return [
        percent(share),
        found.weekly.toFixed(1),
        found.unitByUnit.toFixed(1),
        ratio.toFixed(2),
        found.ratioError.toFixed(2),
      ];
    }),
  );

const own = workdaysBetween({ falseAlarmsPerMonth: DEFAULT_BUDGET, charts: STATIONS.length });
const strict = workdaysBetween({ falseAlarmsPerMonth: 1, charts: STATIONS.length });

const page = `# Run lengths

Written by \`npm run run-lengths\`; the same seeds give the same page. Days are working days.

## The plant's budget

${STATIONS.length} stations that never change, shares from ${percent(0.005)} to ${percent(0.2)}, 4 to 8 sections a day,
${YEARS} years, 100 such plants. One chart a station raises alarms: the one that counts section by section. Its limit is
the lowest that keeps the station's equal part of the budget, by its exact run length.

${plants()}

With known shares the budget holds; limits are whole numbers, so the plant is a little quieter than it asked for.
A share counted on few sections can be too low, and a chart built on it cries wolf: the program therefore takes it one
standard deviation higher than counted (\`cautiousShare\`).

## Single charts

${singles()}

## A doubled share, found

8 sections a day; the share doubles on any day of the week while both charts are running. The weekly p chart has 40
sections a point, and its limit is set (by lot between two counts) so that it has exactly as many days between false
alarms as the unit-by-unit chart.

${own.toFixed(0)} days between false alarms of one chart: the default budget, ${DEFAULT_BUDGET} a month over ${STATIONS.length} charts.

${delays(own)}

${strict.toFixed(0)} days between false alarms of one chart: a budget of one a month. Here the unit-by-unit chart is sooner, but
not twice as soon: a chart that may cry wolf often is quick of any kind.

${delays(strict)}
`;

writeFileSync(PAGE, page);
console.log(page);
