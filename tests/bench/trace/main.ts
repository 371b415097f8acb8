import { parseArgs } from 'node:util';
import { runTrial } from './trial';
import { scoreOf } from './score';
import type { Score } from './score';

/** Seeds from here on are for reporting. Those from TUNING_SEEDS on were looked at while the ranker was made. */
export const REPORTING_SEEDS = 90_000_000;
export const TUNING_SEEDS = 5_000_000;

const USAGE = 'npm run trace-bench -- [--seeds N] [--from SEED] [--json]';

const main = (): void => {
  const { values } = parseArgs({
    options: {
      seeds: { type: 'string', default: '200' },
      from: { type: 'string', default: String(REPORTING_SEEDS) },
      json: { type: 'boolean', default: false },
    },
  });
  const [seeds, from] = [Number(values.seeds), Number(values.from)];
  if (!Number.isInteger(seeds) || seeds < 1 || !Number.isInteger(from)) {
    process.stderr.write(`--seeds and --from are whole numbers, --seeds at least 1. ${USAGE}\n`);
    process.exitCode = 2;
    return;
  }
  const score = scoreOf(Array.from({ length: seeds }, (_, at) => runTrial(from + at)));
  process.stdout.write(values.json ? `${JSON.stringify(score, null, 2)}\n` : told(score));
};

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`.padStart(8);

const told = (score: Score): string =>
  [
    `${score.trials} plants`,
    `first                ${percent(score.first)}   least of the oracle's ${percent(score.firstOfOracle)}`,
    `first three          ${percent(score.firstThree)}   least of the oracle's ${percent(score.firstThreeOfOracle)}`,
    `first with reports   ${percent(score.firstWithReports)}`,
    `false alarm          ${percent(score.falseAlarm)}`,
    `exposure             ${percent(score.exposureRecall)} found, ${percent(score.exposurePrecision)} of the found true`,
    `calibration          ${percent(score.calibration.distance)} off on average`,
    ...score.calibration.bands.map(
      (band) => `  stated ${percent(band.stated)} true ${percent(band.true)} in ${band.trials}`,
    ),
    'effect claims plants    studbook       oracle         station        lot',
    ...score.cells.map((cell) =>
      [
        cell.effect.padEnd(6),
        cell.claims.padEnd(6),
        String(cell.trials).padStart(6),
        ...(['studbook', 'oracle', 'station', 'lot'] as const).map(
          (ranker) => `${percent(cell[ranker].first)}${percent(cell[ranker].firstThree)}`,
        ),
      ].join(' '),
    ),
    '',
  ].join('\n');

main();
