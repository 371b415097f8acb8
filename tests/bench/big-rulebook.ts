import type { CompiledPlan, Design, Entry, WorkState } from '@libs/judge';
import type { Rulebook, RulebookFiles } from '@libs/rulebook';
import { readRulebook, resolvePlan } from '@libs/rulebook';
import { createHash } from 'node:crypto';
import { demonstrationRulebookFiles, WET_HALF } from '../support/demonstration-rulebook';
import { done, entryOf, stateOf } from '../support/judging';

export const BIG = { operations: 400, rows: 5_000 } as const;

export const sha256Hex = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** Time of the processor, so that a busy machine does not count. */
export const spentMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1_000;
};

/** What lies over what, in one place of a home. */
const LAYERS = 10;

/** A rulebook far larger than any plant's: layers of covers, four rows for every characteristic. */
export const bigFiles = (): RulebookFiles => {
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
  ).filter((_, index) => index % LAYERS !== 0);
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

export const rulebookFrom = (files: RulebookFiles): Rulebook => {
  const read = readRulebook(files);
  if (read.ok) return read.rulebook;
  throw new Error(JSON.stringify(read.problems.slice(0, 3)));
};

export const planFrom = (rulebook: Rulebook, design: Design = WET_HALF): CompiledPlan => {
  const answer = resolvePlan(rulebook, 1, design, sha256Hex);
  if (answer.ok) return answer.plan;
  throw new Error(JSON.stringify(answer.problems.slice(0, 3)));
};

/** Designs that come down one line: no two alike. */
export const designs: readonly Design[] = ['I', 'II', 'III'].flatMap((wind) =>
  ['1', '2', '3'].flatMap((thermal) => ['2x4', '2x6'].map((stud) => ({ ...WET_HALF, wind, thermal, stud }))),
);

/** Seven tenths of the plan done, one hold open; every value given and within its limits, lengths in another unit than planned. */
export const dayIn = (
  plan: CompiledPlan,
): { readonly state: WorkState; readonly entries: readonly Entry[] } => {
  const told = plan.order.slice(0, Math.floor(plan.order.length * 0.7));
  return {
    state: stateOf(Object.fromEntries(told.map((id) => [id, done()]))),
    entries: plan.order.map((id) =>
      entryOf(id, {
        values: (plan.operations[id]?.values ?? []).map(({ characteristic, kind, unit }) => ({
          characteristic,
          value: kind === 'yes-no' ? 'yes' : '500.125',
          unit: unit === '[in_i]' ? 'mm' : unit,
        })),
      }),
    ),
  };
};
