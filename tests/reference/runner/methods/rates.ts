import {
  clopperPearson,
  defectsPerMillion,
  defectsPerUnit,
  firstPassYield,
  firstResultYield,
  firstTimeYield,
  lastResultYield,
  normalizedYield,
  pareto,
  perMillionAt,
  poissonExact,
  rolledYield,
  share,
  sigmaLevel,
  throughputYield,
  topAndRest,
  vitalFew,
  wilson,
  wilsonCorrected,
} from '@libs/quality';
import type { Interval } from '@libs/quality';
import type { Case } from '../case-file';
import { has } from '../method';
import type { Figures, Method } from '../method';

const pair = ({ low, high }: Interval): readonly (number | null)[] => [low, high];

const intervalFigures = ({ input }: Case): Figures => {
  const { x, n, level }: { x: number; n: number; level: number } = input as never;
  const rate = { count: x, of: n };
  return {
    point: share(rate),
    wilson: pair(wilson(rate, level)),
    wilson_continuity_corrected: pair(wilsonCorrected(rate, level)),
    clopper_pearson: pair(clopperPearson(rate, level)),
    wilson_90: pair(wilson(rate, 0.9)),
    wilson_99: pair(wilson(rate, 0.99)),
  };
};

const poissonFigures = ({ input }: Case): Figures => {
  const { counts, level }: { counts: number[]; level: number } = input as never;
  return {
    intervals: counts.map((x) => ({
      x,
      lower: poissonExact(x, level).low,
      upper: poissonExact(x, level).high,
    })),
  };
};

const printedPoisson = ({ input }: Case): Figures => {
  const { counts, level }: { counts: number[]; level: number } = input as never;
  const rows = counts.map((x) => ({ x, ...poissonExact(x, level) }));
  return Object.fromEntries(
    rows.flatMap(({ x, low, high }) => [
      [`x=${x}`, [low, high]],
      [`x=${x} upper`, high],
      [`x=${x} lower`, low],
    ]),
  );
};

const product = (values: readonly (number | null)[]): number =>
  values.reduce<number>((all, each) => all * (each ?? NaN), 1);

const stepFigures = ({ input }: Case): Figures => {
  const { steps }: { steps: { in: number; reworked: number; good_out: number }[] } = input as never;
  const line = steps.map((step) => ({ in: step.in, reworked: step.reworked, goodOut: step.good_out }));
  const firstTime = line.map(firstTimeYield).map(share);
  const rolled = rolledYield(line.map(firstPassYield)) ?? NaN;
  return {
    fty: firstTime,
    total_fty: product(firstTime),
    fpy: line.map(firstPassYield).map(share),
    rty: rolled,
    rty_fraction: rolled,
    normalized_yield: normalizedYield(rolled, line.length),
  };
};

const logFigures = ({ input }: Case): Figures => {
  const { attempts_in_time_order: log }: { attempts_in_time_order: { results: string[] }[] } = input as never;
  const results = log.map((unit) => unit.results.map((result) => result === 'pass'));
  const attempts = results.flat();
  const [first, last] = [firstResultYield(results), lastResultYield(results)];
  return {
    units: first.of,
    attempts: attempts.length,
    first_pass_units: first.count,
    first_pass_yield: share(first),
    final_yield_units_last_result_pass: last.count,
    final_yield: share(last),
    passes_over_attempts_WRONG_as_fpy: attempts.filter(Boolean).length / attempts.length,
    retested_units: results.filter((unit) => unit.length > 1).length,
    units_still_failed: last.of - last.count,
  };
};

const perMillionFigures = ({ input }: Case): Figures => {
  const { units, opportunities_per_unit: opportunities, defects }: Record<string, number> = input as never;
  const perUnit = defectsPerUnit(defects ?? NaN, units ?? NaN) ?? NaN;
  const perMillion = defectsPerMillion(defects ?? NaN, units ?? NaN, opportunities ?? NaN) ?? NaN;
  const level = sigmaLevel(perMillion);
  return {
    dpu: perUnit,
    dpo: perMillion / 1e6,
    dpmo: perMillion,
    throughput_yield_poisson: throughputYield(perUnit),
    z_long_term: level === null ? null : level - 1.5,
    'sigma_level_with_1.5_shift': level,
  };
};

const modelFigures = ({ input }: Case): Figures => {
  const { dpu_per_step: steps }: { dpu_per_step: number[] } = input as never;
  const rolled = product(steps.map(throughputYield));
  return {
    total_dpu: steps.reduce((sum, each) => sum + each, 0),
    throughput_yields: steps.map(throughputYield),
    rty: rolled,
    minus_ln_rty: -Math.log(rolled),
    normalized_yield: normalizedYield(rolled, steps.length),
  };
};

const levelFigures = ({ input }: Case): Figures => {
  const { levels }: { levels: number[] } = input as never;
  const table = (tails: 'one' | 'both'): Figures =>
    Object.fromEntries(levels.map((level) => [String(level), perMillionAt(level, tails)]));
  return {
    rows: levels.map((level) => ({
      sigma_level: level,
      dpmo_one_tail: perMillionAt(level, 'one'),
      dpmo_two_tail: perMillionAt(level, 'both'),
    })),
    one_tail: table('one'),
    two_tail: table('both'),
  };
};

const ratioFigures = ({ input }: Case): Figures => {
  const ratio = (part: string, whole: string): number => Number(input[part]) / Number(input[whole]);
  const inspected = Number(input['inspected_parts_IP']);
  const good = Number(input['good_parts_first_pass_GP']);
  return {
    quality_ratio_GQ_over_PQ: ratio('good_quantity_GQ', 'produced_quantity_PQ'),
    scrap_ratio_SQ_over_PQ: ratio('scrap_quantity_SQ', 'produced_quantity_PQ'),
    rework_ratio_RQ_over_PQ: ratio('rework_quantity_RQ', 'produced_quantity_PQ'),
    first_pass_yield_GP_over_IP: share(
      firstPassYield({ in: inspected, goodOut: inspected, reworked: inspected - good }),
    ),
  };
};

const paretoFigures = ({ input }: Case): Figures => {
  const {
    categories,
    top,
  }: {
    categories: Record<string, number> | { code: string; count: number }[];
    top?: number;
  } = input as never;
  const tallies = Array.isArray(categories)
    ? categories.map(({ code, count }) => ({ key: code, count }))
    : Object.entries(categories).map(([key, count]) => ({ key, count }));
  const { total, rows } = pareto(tallies);
  const parted = topAndRest(rows, top ?? rows.length);
  let sum = 0;
  return {
    total,
    order: rows.map(({ key }) => key),
    frequency: rows.map(({ count }) => count),
    cumulative: rows.map(({ count }) => (sum += count)),
    percent: rows.map((row) => row.share * 100),
    cumulative_percent: rows.map(({ cumulative }) => cumulative * 100),
    vital_few_80_percent: vitalFew(rows).map(({ key }) => key),
    [`top${top ?? ''}_plus_other`]: [
      ...parted.top.map(({ key, count }) => ({ code: key, count })),
      { code: 'Other', count: parted.rest },
    ],
  };
};

export const RATES: readonly Method[] = [
  {
    name: 'proportion intervals',
    reads: (one) => has(one, 'x', 'n', 'level'),
    figures: intervalFigures,
    printed: (_, figures) => ({
      wilson_method_3: figures['wilson'],
      wilson_continuity_corrected_method_4: figures['wilson_continuity_corrected'],
      clopper_pearson_method_5: figures['clopper_pearson'],
    }),
  },
  {
    name: 'Poisson interval',
    reads: (one) => has(one, 'counts', 'level'),
    figures: poissonFigures,
    printed: printedPoisson,
  },
  { name: 'yields of steps', reads: (one) => has(one, 'steps'), figures: stepFigures },
  { name: 'yield of a test log', reads: (one) => has(one, 'attempts_in_time_order'), figures: logFigures },
  {
    name: 'defects per million',
    reads: (one) => has(one, 'opportunities_per_unit'),
    figures: perMillionFigures,
  },
  { name: 'Poisson yield model', reads: (one) => has(one, 'dpu_per_step'), figures: modelFigures },
  { name: 'sigma levels', reads: (one) => has(one, 'levels', 'shift'), figures: levelFigures },
  { name: 'quality ratios', reads: (one) => has(one, 'produced_quantity_PQ'), figures: ratioFigures },
  { name: 'Pareto', reads: (one) => has(one, 'categories'), figures: paretoFigures },
];
