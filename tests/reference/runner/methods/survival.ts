import {
  eventTrend,
  kaplanMeier,
  logRank,
  meanChange,
  meanCumulative,
  medianLifetime,
  pettitt,
  SURVIVAL_SCALES,
  survivalInterval,
  waitsBetween,
} from '@libs/quality';
import type { ClaimHistory, Lifetime, SurvivalScale } from '@libs/quality';
import type { Case } from '../case-file';
import { has } from '../method';
import type { Figures, Method } from '../method';

const lifetimesOf = ({ input }: Case): readonly Lifetime[] => {
  const { time, event }: { time: number[]; event: number[] } = input as never;
  return time.map((each, at) => ({ time: each, event: event[at] === 1 }));
};

const lifetimeFigures = (one: Case): Figures => {
  const steps = kaplanMeier(lifetimesOf(one));
  const intervals = (scale: SurvivalScale): readonly (readonly [number, number])[] =>
    steps.map((step) => survivalInterval(step, scale)).map(({ low, high }) => [low, high]);
  const [plain, log, logLog] = SURVIVAL_SCALES.map(intervals);
  return {
    t: steps.map(({ time }) => time),
    at_risk: steps.map(({ atRisk }) => atRisk),
    events: steps.map(({ events }) => events),
    S: steps.map(({ survival }) => survival),
    greenwood_se: steps.map(({ standardError }) => standardError),
    nelson_aalen: steps.map(({ cumulativeHazard }) => cumulativeHazard),
    nelson_aalen_se: steps.map(({ hazardError }) => hazardError),
    ci95_loglog: logLog,
    ci95_log: log,
    ci95_plain_clipped: plain,
    median: medianLifetime(steps),
    loglog_ci95_lower: logLog?.map(([low]) => low),
    loglog_ci95_upper_first: logLog?.[0]?.[1],
  };
};

const groupName = (id: string): string => id.split('.').at(-1) ?? id;

const logRankFigures = (one: Case, find: (id: string) => Case): Figures => {
  const { see }: { see: [string, string] } = one.input as never;
  const [first, second] = see.map(find).map(lifetimesOf);
  const found = logRank(first ?? [], second ?? []);
  return {
    chi_square: found.statistic,
    df: found.degreesOfFreedom,
    p: found.p,
    observed: found.observed,
    expected: found.expected,
    // Only names: the case writes 6-MP where its file has km.6mp.
    groups: Array.isArray(one.computed['groups']) ? one.computed['groups'] : see.map(groupName),
  };
};

const cumulativeFigures = ({ input }: Case): Figures => {
  const { units }: { units: ClaimHistory[] } = input as never;
  const steps = meanCumulative(units);
  return {
    t: steps.map(({ time }) => time),
    events: steps.map(({ events }) => events),
    at_risk: steps.map(({ atRisk }) => atRisk),
    mcf: steps.map(({ mean }) => mean),
    se_poisson: steps.map(({ poissonError }) => poissonError),
    se_robust_lawless_nadeau: steps.map(({ robustError }) => robustError),
    total_events: steps.reduce((sum, { events }) => sum + events, 0),
    units: units.length,
  };
};

const trendFigures = ({ input }: Case): Figures => {
  const { event_times: times, end_time: end }: { event_times: number[]; end_time: number } = input as never;
  const found = eventTrend(times, end);
  return {
    interarrival: waitsBetween(times),
    reversals: found.reversals,
    reversals_max: found.mostReversals,
    reversals_expected_no_trend: found.expectedReversals,
    military_handbook_chi_square: found.handbook.statistic,
    military_handbook_p_upper: found.handbook.p,
    df: found.handbook.degreesOfFreedom,
    laplace_z: found.laplace.z,
    laplace_p_lower: found.laplace.p,
  };
};

const changeFigures = ({ input }: Case): Figures => {
  const { y, first_year: firstYear }: { y: number[]; first_year?: number } = input as never;
  const [squares, ranks] = [meanChange(y), pettitt(y)];
  const last = squares === null ? null : squares.last + 1;
  return {
    last_index_before_change: last,
    year: last === null || firstYear === undefined ? undefined : firstYear + last - 1,
    mean_before: squares?.before,
    mean_after: squares?.after,
    sse: squares?.unexplained,
    pettitt_K: ranks.statistic,
    pettitt_index: ranks.last + 1,
    pettitt_p_approx: ranks.p,
  };
};

export const SURVIVAL: readonly Method[] = [
  { name: 'Kaplan-Meier', reads: (one) => has(one, 'time', 'event'), figures: lifetimeFigures },
  { name: 'log-rank', reads: (one) => has(one, 'see'), figures: logRankFigures },
  {
    name: 'mean cumulative function',
    reads: (one) => has(one, 'units') && one.computed['mcf'] !== undefined,
    figures: cumulativeFigures,
  },
  {
    name: 'trend of event times',
    reads: (one) => has(one, 'event_times', 'end_time'),
    figures: trendFigures,
  },
  { name: 'change of mean', reads: (one) => has(one, 'y'), figures: changeFigures },
];
