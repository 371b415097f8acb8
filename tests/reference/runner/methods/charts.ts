import {
  beyondLimits,
  cChart,
  D4_OF_TWO,
  individualsChart,
  isBeyond,
  laneyPChart,
  laneyUChart,
  meanMovingRange,
  npChart,
  pChart,
  rangeChart,
  standardised,
  uChart,
} from '@libs/quality';
import type { ControlChart, Rate } from '@libs/quality';
import type { Case } from '../case-file';
import { fromOne, has } from '../method';
import type { Figures, Method } from '../method';

const total = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0);

const subgroups = (counts: readonly number[], sizes: number | readonly number[]): readonly Rate[] =>
  counts.map((count, at) => ({ count, of: typeof sizes === 'number' ? sizes : (sizes[at] ?? NaN) }));

const limits = (chart: ControlChart): Figures => {
  const sigma = chart.points.map((point) => point.sigma);
  return {
    center: chart.center,
    LCL: chart.points.map(({ lower }) => lower),
    UCL: chart.points.map(({ upper }) => upper),
    sigma,
    sigma_p: sigma,
    beyond_limits: fromOne(beyondLimits(chart)),
  };
};

const kindOf = (one: Case): unknown => one.input['chart'];

const pFigures = ({ input }: Case): Figures => {
  const {
    n,
    defectives,
    samples,
    phase2_defectives: later,
    phase2_samples: laterSamples,
  }: {
    n: number | number[];
    defectives: number[];
    samples?: number[];
    phase2_defectives?: number[];
    phase2_samples?: number[];
  } = input as never;
  const groups = subgroups(defectives, n);
  const chart = pChart(groups);
  const first = chart.points[0];
  const named = (names: readonly number[] | undefined, indices: readonly number[]): readonly number[] =>
    indices.map((at) => names?.[at] ?? at + 1);
  const both = pChart([...groups, ...subgroups(later ?? [], n)], { baseline: groups.map((_, at) => at) });
  const beyondBoth = beyondLimits(both);
  return {
    ...limits(chart),
    p: chart.points.map(({ value }) => value),
    total_defectives: total(defectives),
    total_inspected: total(groups.map(({ of }) => of)),
    LCL_unclipped: chart.center - 3 * (first?.sigma ?? NaN),
    beyond_limits_sample_numbers: named(samples, beyondLimits(chart)),
    beyond_limits_phase1: named(
      samples,
      beyondBoth.filter((at) => at < groups.length),
    ),
    beyond_limits_phase2: named(
      laterSamples,
      beyondBoth.filter((at) => at >= groups.length).map((at) => at - groups.length),
    ),
    ...(typeof n === 'number' && {
      np: limits(npChart(defectives, n)),
      np_chart: limits(npChart(defectives, n)),
    }),
  };
};

const seriesFigures = ({ input }: Case): Figures => {
  const { series }: { series: Record<string, { n: number[]; d: number[] }> } = input as never;
  return Object.fromEntries(
    Object.entries(series).map(([name, { n, d }]) => {
      const chart = pChart(subgroups(d, n));
      const points = chart.points.flatMap((point, at) => [
        [`point_${at + 1}`, point.value],
        [`limits_point_${at + 1}`, point.lower === null ? null : [point.lower, point.upper]],
      ]);
      return [name, { ...limits(chart), ...Object.fromEntries(points) }];
    }),
  );
};

const npFigures = ({ input }: Case): Figures => {
  const { n, defectives }: { n: number; defectives: number[] } = input as never;
  return { ...limits(npChart(defectives, n)), pbar: total(defectives) / (defectives.length * n) };
};

const cFigures = ({ input }: Case): Figures => {
  const { counts }: { counts: number[] } = input as never;
  const chart = cChart(counts);
  const onLimit = chart.points.flatMap((point, at) =>
    !isBeyond(point) && (point.value === point.upper || point.value === point.lower) ? [at] : [],
  );
  return { ...limits(chart), total: total(counts), on_limit_not_beyond: fromOne(onLimit) };
};

const uFigures = ({ input }: Case): Figures => {
  const { counts, units }: { counts: number[]; units: number | number[] } = input as never;
  return { ...limits(uChart(subgroups(counts, units))), total: total(counts) };
};

const EXACT_D2 = 2 / Math.sqrt(Math.PI);

const laneyFigures = ({ input }: Case): Figures => {
  const {
    chart,
    defectives,
    counts,
    n,
    units,
  }: {
    chart: "p'" | "u'";
    defectives?: number[];
    counts?: number[];
    n?: number[];
    units?: number[];
  } = input as never;
  const groups = subgroups(defectives ?? counts ?? [], n ?? units ?? []);
  const corrected = chart === "p'" ? laneyPChart(groups) : laneyUChart(groups);
  const plain = chart === "p'" ? pChart(groups) : uChart(groups);
  const z = standardised(plain);
  const range = meanMovingRange(z.map((each) => each ?? NaN));
  return {
    ...limits(corrected),
    z,
    mean_moving_range_z: range,
    sigma_z: corrected.inflation,
    sigma_z_with_exact_d2: range / EXACT_D2,
    uncorrected: limits(plain),
  };
};

const individualsFigures = ({ input }: Case): Figures => {
  const { x, d2 }: { x: number[]; d2?: number } = input as never;
  const chart = individualsChart(x, d2 === undefined ? {} : { d2 });
  return {
    ...limits(chart),
    mean: chart.center,
    mean_moving_range: meanMovingRange(x),
    'MR_UCL_D4_3.267': D4_OF_TWO * meanMovingRange(x),
    with_exact_d2: { ...limits(individualsChart(x, { d2: EXACT_D2 })), d2: EXACT_D2 },
  };
};

const rangeFigures = ({ input }: Case): Figures => {
  const { ranges, D3, D4 }: { ranges: number[]; D3: number; D4: number } = input as never;
  return limits(rangeChart(ranges, { lower: D3, upper: D4 }));
};

export const CHARTS: readonly Method[] = [
  {
    name: 'p chart of several series',
    reads: (one) => kindOf(one) === 'p' && has(one, 'series'),
    figures: seriesFigures,
  },
  { name: 'p chart', reads: (one) => kindOf(one) === 'p' && has(one, 'defectives', 'n'), figures: pFigures },
  { name: 'np chart', reads: (one) => kindOf(one) === 'np', figures: npFigures },
  { name: 'c chart', reads: (one) => kindOf(one) === 'c', figures: cFigures },
  { name: 'u chart', reads: (one) => kindOf(one) === 'u', figures: uFigures },
  {
    name: 'Laney chart',
    reads: (one) => kindOf(one) === "p'" || kindOf(one) === "u'",
    figures: laneyFigures,
  },
  { name: 'individuals chart', reads: (one) => kindOf(one) === 'I-MR', figures: individualsFigures },
  { name: 'range chart', reads: (one) => kindOf(one) === 'R', figures: rangeFigures },
];
