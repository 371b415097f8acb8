import type { Entry } from '@libs/judge';
import { judgeAsking, judgeWork, standings } from '@libs/judge';
import type { RulebookFiles } from '@libs/rulebook';
import { readRulebook } from '@libs/rulebook';
import { demonstrationRulebookFiles } from '../support/demonstration-rulebook';
import { BIG, bigFiles, dayIn, planFrom, rulebookFrom, spentMs } from './big-rulebook';

/**
 * What reading a rulebook, resolving a plan and judging an entry take, in time of the processor, so that a busy
 * machine does not count: `node --require ./tests/support/typescript.cjs tests/bench/judge-times.ts`.
 */
const ROUNDS = 40;

/** Mean over the rounds after as many to warm up. */
const meanMs = (rounds: number, work: () => void): number => {
  for (let round = 0; round < rounds; round += 1) work();
  const start = spentMs();
  for (let round = 0; round < rounds; round += 1) work();
  return (spentMs() - start) / rounds;
};

const timesOf = (name: string, files: RulebookFiles): void => {
  const rulebook = rulebookFrom(files);
  const plan = planFrom(rulebook);
  const { state, entries } = dayIn(plan);
  const all = (judge: (entry: Entry) => unknown) => () => entries.forEach(judge);
  const perEntryUs = (work: () => void): number => (meanMs(ROUNDS, work) * 1_000) / entries.length;
  const line = (what: string, figure: number, unit: string): string =>
    `  ${what.padEnd(14)} ${figure.toFixed(1)} ${unit}\n`;
  process.stdout.write(
    `${name}: ${plan.order.length} operations in the plan\n` +
      line(
        'read',
        meanMs(5, () => void readRulebook(files)),
        'ms',
      ) +
      line(
        'resolve',
        meanMs(ROUNDS, () => void planFrom(rulebook)),
        'ms',
      ) +
      line('judge entry', perEntryUs(all((entry) => judgeWork(plan, state, entry))), 'us') +
      line('judge asking', perEntryUs(all((entry) => judgeAsking(plan, state, entry))), 'us') +
      line(
        'standings',
        meanMs(ROUNDS, () => void standings(plan, state, 'drywall')),
        'ms',
      ),
  );
};

timesOf('demonstration rulebook', demonstrationRulebookFiles());
timesOf(`${BIG.operations} operations, ${BIG.rows} rows`, bigFiles());
