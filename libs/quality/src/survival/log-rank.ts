import { chiSquareOf } from '../association';
import type { ChiSquare } from '../association';
import { eventTimes, riskAt } from './kaplan-meier';
import type { Lifetime } from './kaplan-meier';

export type LogRank = ChiSquare & {
  readonly observed: readonly [number, number];
  readonly expected: readonly [number, number];
};

/** Do two groups claim at different rates over their ages (Mantel 1966)? Variance hypergeometric. */
export const logRank = (first: readonly Lifetime[], second: readonly Lifetime[]): LogRank => {
  let [expected, variance] = [0, 0];
  for (const time of eventTimes([...first, ...second])) {
    const [one, two] = [riskAt(first, time), riskAt(second, time)];
    const atRisk = one.atRisk + two.atRisk;
    const events = one.events + two.events;
    expected += (events * one.atRisk) / atRisk;
    if (atRisk > 1) {
      variance += (events * one.atRisk * two.atRisk * (atRisk - events)) / (atRisk * atRisk * (atRisk - 1));
    }
  }
  const observed = first.filter(({ event }) => event).length;
  const all = observed + second.filter(({ event }) => event).length;
  return {
    ...chiSquareOf(Math.pow(observed - expected, 2) / variance, 1),
    observed: [observed, all - observed],
    expected: [expected, all - expected],
  };
};
