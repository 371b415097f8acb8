import {
  benjaminiHochberg,
  benjaminiYekutieli,
  bonferroni,
  breslowDay,
  cochranMantelHaenszel,
  commonOddsRatio,
  commonRelativeRisk,
  compareRisks,
  conditionalOddsInterval,
  conditionalOddsRatio,
  fisherExact,
  hochberg,
  holm,
  homogeneity,
  likelihoodRatio,
  pearsonChiSquare,
  poissonRate,
  poissonTest,
  rateRatio,
  rejectedAt,
  sampleOddsRatio,
  testBasedInterval,
  trendInProportions,
} from '@libs/quality';
import type { TwoByTwo } from '@libs/quality';
import type { Case } from '../case-file';
import { fromOne, has } from '../method';
import type { Figures, Method } from '../method';

const bounds = ({
  low,
  high,
}: {
  readonly low: number;
  readonly high: number;
}): readonly [number, number] => [low, high];

const fisherFigures = ({ input }: Case): Figures => {
  const { table }: { table: TwoByTwo } = input as never;
  const p = {
    p_two_sided: fisherExact(table),
    p_greater: fisherExact(table, 'greater'),
    p_less: fisherExact(table, 'less'),
  };
  const interval = bounds(conditionalOddsInterval(table));
  return {
    ...p,
    exact_fractions: p,
    odds_ratio_conditional_mle: conditionalOddsRatio(table),
    odds_ratio_sample: sampleOddsRatio(table),
    ci95_conditional_exact: interval,
    ci95: interval,
    ci95_one_sided_less: bounds(conditionalOddsInterval(table, 0.95, 'less')),
    ci95_one_sided_greater: bounds(conditionalOddsInterval(table, 0.95, 'greater')),
  };
};

/**
 * R's fisher.test looks for these by uniroot with its default tolerance, .Machine$double.eps^0.25 = 1.22e-4, on the odds
 * ratio or its inverse, whichever is below 1; ours are at the limit of a double. tests/quality/fisher.spec.ts holds ours
 * to the equations they solve.
 */
const asFarAsSearched = (actual: number, expected: number): boolean => {
  const inverse = Math.min(actual, expected) > 1;
  return Math.abs(inverse ? 1 / actual - 1 / expected : actual - expected) <= 1.23e-4;
};

const riskFigures = ({ input }: Case): Figures => {
  const { exposed, unexposed }: Record<'exposed' | 'unexposed', { events: number; n: number }> =
    input as never;
  const table: TwoByTwo = [
    [exposed.events, exposed.n - exposed.events],
    [unexposed.events, unexposed.n - unexposed.events],
  ];
  const found = compareRisks(table);
  const [plain, yates] = [pearsonChiSquare(table), pearsonChiSquare(table, true)];
  return {
    risk_exposed: found.exposed,
    risk_unexposed: found.unexposed,
    rr: found.relativeRisk.value,
    rr_se_log: found.relativeRisk.standardErrorOfLog,
    rr_ci95: bounds(found.relativeRisk),
    or: found.oddsRatio.value,
    or_se_log: found.oddsRatio.standardErrorOfLog,
    or_ci95: bounds(found.oddsRatio),
    or_ci95_woolf: bounds(found.oddsRatio),
    risk_difference: found.riskDifference.value,
    risk_difference_se: found.riskDifference.standardError,
    risk_difference_ci95: bounds(found.riskDifference),
    risk_difference_ci95_wald: bounds(found.riskDifference),
    chi_square: plain.statistic,
    chi_square_p: plain.p,
    chi_square_yates: yates.statistic,
    chi_square_yates_p: yates.p,
    likelihood_ratio_G2: likelihoodRatio(table).statistic,
  };
};

const sumOf = (tables: readonly TwoByTwo[]): TwoByTwo =>
  tables.reduce(([[a, b], [c, d]], [[e, f], [g, h]]): TwoByTwo => [
    [a + e, b + f],
    [c + g, d + h],
  ]);

const strataFigures = ({ input }: Case): Figures => {
  const { tables }: { tables: TwoByTwo[] } = input as never;
  const [odds, risk] = [commonOddsRatio(tables), commonRelativeRisk(tables)];
  const [plain, corrected] = [cochranMantelHaenszel(tables), cochranMantelHaenszel(tables, true)];
  const agree = breslowDay(tables);
  return {
    cmh_no_continuity: plain.statistic,
    cmh_p: plain.p,
    cmh_continuity: corrected.statistic,
    or_mh: odds.value,
    or_ci95_robins_breslow_greenland: bounds(odds),
    or_ci95_test_based: bounds(testBasedInterval(odds.value, plain)),
    rr_mh: risk.value,
    rr_ci95_test_based: bounds(testBasedInterval(risk.value, plain)),
    rr_ci95_greenland_robins: bounds(risk),
    breslow_day: agree.breslowDay.statistic,
    breslow_day_df: agree.breslowDay.degreesOfFreedom,
    breslow_day_p: agree.breslowDay.p,
    tarone: agree.tarone.statistic,
    stratum_or: tables.map(sampleOddsRatio),
    crude_or: sampleOddsRatio(sumOf(tables)),
    total_n: sumOf(tables)
      .flat()
      .reduce((sum, each) => sum + each, 0),
  };
};

const manyFigures = ({ input }: Case): Figures => {
  const { p, q }: { p: number[]; q: number } = input as never;
  const rejected = (adjusted: readonly number[]): readonly number[] => fromOne(rejectedAt(adjusted, q));
  return {
    adjusted_bh: benjaminiHochberg(p),
    adjusted_bonferroni: bonferroni(p),
    adjusted_holm: holm(p),
    adjusted_hochberg: hochberg(p),
    adjusted_by: benjaminiYekutieli(p),
    rejected: rejected(benjaminiHochberg(p)),
    bonferroni_rejected: rejected(bonferroni(p)),
    holm_rejected: rejected(holm(p)),
    hochberg_rejected: rejected(hochberg(p)),
  };
};

const trendFigures = ({ input }: Case): Figures => {
  const { events, n, scores }: Record<'events' | 'n' | 'scores', number[]> = input as never;
  const groups = events.map((count, at) => ({ count, of: n[at] ?? NaN }));
  const [trend, unlike] = [trendInProportions(groups, scores), homogeneity(groups)];
  const last = trendInProportions(
    groups,
    groups.map((_, at) => (at === groups.length - 1 ? 1 : 0)),
  );
  return {
    trend_chi_square: trend.statistic,
    trend_p: trend.p,
    homogeneity_chi_square: unlike.statistic,
    homogeneity_df: unlike.degreesOfFreedom,
    homogeneity_p: unlike.p,
    trend_scores_0001: { chi_square: last.statistic, p: last.p },
  };
};

const poissonFigures = ({ input }: Case): Figures => {
  const {
    one,
    two,
  }: {
    one?: { count: number; exposure: number };
    two?: { counts: [number, number]; exposures: [number, number] };
  } = input as never;
  const single = one && { ...poissonRate(one), p: poissonTest(one, 1) };
  const ratio =
    two &&
    rateRatio(
      { count: two.counts[0], exposure: two.exposures[0] },
      { count: two.counts[1], exposure: two.exposures[1] },
    );
  return {
    ...(single && { one: { rate: single.value, ci95: bounds(single), p_vs_1: single.p } }),
    ...(ratio && {
      two: { rate_ratio: ratio.value, ci95: bounds(ratio), p_two_sided: ratio.p },
      two_rate_ratio: ratio.value,
      two_p: ratio.p,
    }),
  };
};

export const ASSOCIATION: readonly Method[] = [
  {
    name: 'Fisher exact',
    reads: (one) => has(one, 'table') && one.file !== 'sampling-plan',
    figures: fisherFigures,
    searched: {
      odds_ratio_conditional_mle: asFarAsSearched,
      ci95_conditional_exact: asFarAsSearched,
      ci95: asFarAsSearched,
      ci95_one_sided_less: asFarAsSearched,
      ci95_one_sided_greater: asFarAsSearched,
    },
  },
  { name: 'risks compared', reads: (one) => has(one, 'exposed', 'unexposed'), figures: riskFigures },
  { name: 'Mantel-Haenszel', reads: (one) => has(one, 'tables'), figures: strataFigures },
  { name: 'many tests', reads: (one) => has(one, 'p', 'q'), figures: manyFigures },
  { name: 'trend in proportions', reads: (one) => has(one, 'events', 'n', 'scores'), figures: trendFigures },
  { name: 'Poisson rates', reads: (one) => has(one, 'one') || has(one, 'two'), figures: poissonFigures },
];
