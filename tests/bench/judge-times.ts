import type { CompiledPlan, Entry, WorkState } from '@libs/judge';
import { judgeAsking, judgeWork, standings } from '@libs/judge';
import type { RulebookFiles } from '@libs/rulebook';
import { readRulebook, resolvePlan } from '@libs/rulebook';
import { createHash } from 'node:crypto';
import { demonstrationRulebookFiles, WET_HALF } from '../support/demonstration-rulebook';
import { done, entryOf, stateOf } from '../support/judging';

/**
 * What reading a rulebook, resolving a plan and judging an entry take, in time of the processor, so that a busy
 * machine does not count: `node --require ./tests/support/typescript.cjs tests/bench/judge-times.ts`.
 */
const ROUNDS = 40;
const BIG = { operations: 400, rows: 5_000 } as const;

const sha256Hex = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

const spentMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1_000;
};

/** Mean over the rounds after as many to warm up. */
const meanMs = (rounds: number, work: () => void): number => {
  for (let round = 0; round < rounds; round += 1) work();
  const start = spentMs();
  for (let round = 0; round < rounds; round += 1) work();
  return (spentMs() - start) / rounds;
};

/** A rulebook far larger than any plant's: one long line of covers, four rows for every characteristic. */
const bigFiles = (): RulebookFiles => {
  const stations = ['floor', 'rough-in', 'roof-set', 'exterior', 'drywall', 'final'];
  const stationOf = (index: number): string =>
    stations[Math.floor((index * stations.length) / BIG.operations)] ?? 'final';
  const operations = Array.from({ length: BIG.operations }, (_, index) =>
    JSON.stringify({
      id: `op-${index}`,
      en: 'Op',
      es: 'Op',
      station: stationOf(index),
      crew: 'walls',
      entry: 'V',
    }),
  );
  const covers = Array.from(
    { length: BIG.operations - 1 },
    (_, index) => `op-${index + 1},op-${index},any,-,refuse,practice,p`,
  );
  const values = Array.from({ length: BIG.rows }, (_, index) => {
    const nth = Math.floor(index / BIG.operations);
    const wind = ['"""I"""', '"""II"""', '"""III"""', '-'][nth % 4] ?? '-';
    const row = `C,C,measure,[in_i],>= ${nth}.5,-,-,-,hold,entry,-,always,1,practice,p,yes,${wind}`;
    return `op-${index % BIG.operations},c-${Math.floor(nth / 4)},${row}`;
  });
  const { 'plant.yaml': plant = '', 'lots.csv': lots = '' } = demonstrationRulebookFiles();
  return {
    'plant.yaml': plant,
    'lots.csv': lots,
    'operations.yaml': operations.map((operation) => `- ${operation}`).join('\n'),
    'covers.csv': ['cover,hides,hidden,other_face,grade,source_kind,source', ...covers].join('\n'),
    'values.csv': [
      'operation,characteristic,en,es,kind,unit,required,as_design,relation,choices,grade,from,lot_kind,asked,' +
        'worst_of,source_kind,source,on,wind',
      ...values,
    ].join('\n'),
  };
};

/** Seven tenths of the plan done, one hold open; every value given, lengths in another unit than planned. */
const dayIn = (plan: CompiledPlan): { readonly state: WorkState; readonly entries: readonly Entry[] } => {
  const told = plan.order.slice(0, Math.floor(plan.order.length * 0.7));
  return {
    state: stateOf(Object.fromEntries(told.map((id) => [id, done()]))),
    entries: plan.order.map((id) =>
      entryOf(id, {
        values: (plan.operations[id]?.values ?? []).map(({ characteristic, kind, unit }) => ({
          characteristic,
          value: kind === 'yes-no' ? 'yes' : '10.125',
          unit: unit === '[in_i]' ? 'mm' : unit,
        })),
      }),
    ),
  };
};

const timesOf = (name: string, files: RulebookFiles): void => {
  const read = readRulebook(files);
  if (!read.ok) throw new Error(JSON.stringify(read.problems.slice(0, 3)));
  const resolve = (): CompiledPlan => {
    const answer = resolvePlan(read.rulebook, 1, WET_HALF, sha256Hex);
    if (!answer.ok) throw new Error(JSON.stringify(answer.problems.slice(0, 3)));
    return answer.plan;
  };
  const plan = resolve();
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
        meanMs(ROUNDS, () => void resolve()),
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
