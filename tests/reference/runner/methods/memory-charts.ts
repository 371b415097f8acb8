import {
  above,
  chanceBeyond,
  chiSquareUpperTail,
  countDispersion,
  cusum,
  cusumRunLength,
  ewma,
  NELSON,
  ruleRunLength,
  runSignals,
  shewhartRunLength,
  twoSidedRunLength,
  WESTERN_ELECTRIC,
} from '@libs/quality';
import type { RuleSignal } from '@libs/quality';
import type { Case } from '../case-file';
import { fromOne, has } from '../method';
import type { Figures, Method } from '../method';

const byRule = (
  signals: readonly RuleSignal[],
  points: (signal: RuleSignal) => readonly number[],
): Figures => {
  const found = new Map<string, Set<number>>();
  for (const signal of signals) {
    found.set(signal.rule, new Set([...(found.get(signal.rule) ?? []), ...points(signal)]));
  }
  return Object.fromEntries([...found].map(([rule, at]) => [rule, fromOne([...at].sort((a, b) => a - b))]));
};

/** A case that lists members was run under all rules, so that a rule it does not list must stay silent. */
const onlyAsked = (one: Case, figures: Figures): Figures => {
  const asked: Figures = (one.computed['flagged_at_last_point'] ?? {}) as never;
  const listed = (rule: string): boolean => asked[rule] !== undefined;
  const unlisted = Object.keys(figures).filter((rule) => !listed(rule));
  const all = one.computed['all_member_points'] !== undefined || Object.keys(asked).length === 0;
  if (all && unlisted.length > 0) throw new Error(`fires as well: ${unlisted.join(', ')}`);
  return figures;
};

const ruleFigures = (one: Case): Figures => {
  const { series, center, sigma }: { series: (number | null)[]; center: number; sigma: number } =
    one.input as never;
  const distances = series.map((value) => (value === null ? null : (value - center) / sigma));
  const signals = runSignals(distances, [...WESTERN_ELECTRIC, ...NELSON]);
  return {
    flagged_at_last_point: onlyAsked(
      one,
      byRule(signals, ({ at }) => [at]),
    ),
    all_member_points: byRule(signals, ({ members }) => members),
  };
};

const falseAlarms = (): Figures => ({
  in_control_ARL_rule1_only: shewhartRunLength(chanceBeyond(3)),
  in_control_ARL_all_four: ruleRunLength(WESTERN_ELECTRIC),
  P_eight_same_side: 2 * Math.pow(0.5, 8),
});

const ewmaFigures = ({ input }: Case): Figures => {
  const {
    x,
    lambda,
    target,
    sigma,
    L,
  }: Record<'lambda' | 'target' | 'sigma' | 'L', number> & { x: number[] } = input as never;
  const design = { lambda, target, sigma, width: L };
  const steady = ewma(x, { ...design, steady: true });
  const varying = ewma(x, design);
  const signals = steady.values.flatMap((value, at) =>
    value > (steady.upper[at] ?? 0) || value < (steady.lower[at] ?? 0) ? [at] : [],
  );
  const steadyState = { factor: Math.sqrt(lambda / (2 - lambda)), UCL: steady.upper, LCL: steady.lower };
  return {
    ewma: steady.values,
    steady_state: steadyState,
    time_varying: { UCL: varying.upper, LCL: varying.lower },
    signals: fromOne(signals),
  };
};

const cusumFigures = ({ input }: Case): Figures => {
  const { x, target, k, h }: Record<'target' | 'k' | 'h', number> & { x: number[] } = input as never;
  const { high, low } = cusum(x, { target, slack: k });
  let sum = 0;
  return {
    S_hi: high,
    S_lo: low,
    cumulative_sum: x.map((value) => (sum += value - target)),
    signals_high: fromOne(above(high, h)),
    signals_low: fromOne(above(low, h)),
    first_signal_high: fromOne(above(high, h))[0] ?? null,
  };
};

const runLengths = ({ input }: Case): readonly (readonly [string, Record<string, number>])[] => {
  const { k_sigmas: slack, h_sigmas: limits }: { k_sigmas: number; h_sigmas: number[] } = input as never;
  return limits.map((limit) => {
    const at = (shift: number): number => cusumRunLength({ slack, limit, shift });
    return [
      String(limit),
      {
        one_sided_ARL0: at(0),
        one_sided_ARL1_shift1: at(1),
        two_sided_ARL0: twoSidedRunLength(at(0), at(0)),
        two_sided_ARL1_shift1: twoSidedRunLength(at(1), at(-1)),
      },
    ];
  });
};

const printedRunLengths = (one: Case): Figures => {
  const sided = (side: 'one' | 'two'): Figures =>
    Object.fromEntries(
      runLengths(one).map(([limit, found]) => [
        limit,
        { ARL0: found[`${side}_sided_ARL0`], ARL1_shift1: found[`${side}_sided_ARL1_shift1`] },
      ]),
    );
  return { one_sided: sided('one'), two_sided: sided('two') };
};

const dispersionFigures = ({ input }: Case): Figures => {
  const { x, size }: { x: number[]; size?: number } = input as never;
  const { ratio, statistic, degreesOfFreedom } = countDispersion(x, size);
  return {
    observed_over_theoretical_variance: ratio,
    statistic,
    df: degreesOfFreedom,
    p_value_upper: chiSquareUpperTail(statistic, degreesOfFreedom),
  };
};

/** The case holds five digits of it. */
const fiveDigits = (actual: number, expected: number): boolean => Math.abs(actual - expected) <= 0.5e-5;

export const MEMORY_CHARTS: readonly Method[] = [
  { name: 'run rules', reads: (one) => has(one, 'series', 'center', 'sigma'), figures: ruleFigures },
  {
    name: 'false alarms of run rules',
    reads: (one) => has(one, 'rules') && one.file === 'run-rules',
    figures: falseAlarms,
  },
  {
    name: 'EWMA',
    reads: (one) => has(one, 'x', 'lambda', 'target'),
    figures: ewmaFigures,
    printed: (_, { steady_state: steady }) => {
      const { factor, UCL, LCL }: { factor: number; UCL: number[]; LCL: number[] } = steady as never;
      return { factor_printed: factor, UCL, LCL };
    },
  },
  { name: 'CUSUM', reads: (one) => has(one, 'x', 'target', 'k', 'h'), figures: cusumFigures },
  {
    name: 'CUSUM run length',
    reads: (one) => has(one, 'k_sigmas', 'h_sigmas'),
    figures: (one) => Object.fromEntries(runLengths(one)),
    printed: printedRunLengths,
    printedWithin: 0.005,
  },
  {
    name: 'overdispersion',
    reads: (one) => has(one, 'x') && one.computed['observed_over_theoretical_variance'] !== undefined,
    figures: dispersionFigures,
    searched: { p_value_upper: fiveDigits },
  },
];
