import { chiSquareUpperTail, normalCdf } from '../distributions';
import { sum } from '../sums';

/**
 * Do events (claims, failures) come closer together or thin out? Times from a common start, in order, all before `end`
 * (NIST/SEMATECH e-Handbook 8.2.3.4).
 */
export type EventTrend = {
  /** Pairs of waits of which the later is longer: many mean improvement. */
  readonly reversals: number;
  readonly mostReversals: number;
  readonly expectedReversals: number;
  /** Military handbook test: large means improvement. */
  readonly handbook: { readonly statistic: number; readonly degreesOfFreedom: number; readonly p: number };
  /** Laplace's test: negative means improvement. `p` is its lower tail. */
  readonly laplace: { readonly z: number; readonly p: number };
};

export const waitsBetween = (times: readonly number[]): readonly number[] =>
  times.map((time, at) => time - (times[at - 1] ?? 0));

export const eventTrend = (times: readonly number[], end: number): EventTrend => {
  const waits = waitsBetween(times);
  const pairs = (waits.length * (waits.length - 1)) / 2;
  const statistic = 2 * sum(times.map((time) => Math.log(end / time)));
  const z = (sum(times) - (times.length * end) / 2) / (end * Math.sqrt(times.length / 12));
  return {
    reversals: sum(waits.map((wait, at) => waits.slice(at + 1).filter((later) => later > wait).length)),
    mostReversals: pairs,
    expectedReversals: pairs / 2,
    handbook: {
      statistic,
      degreesOfFreedom: 2 * times.length,
      p: chiSquareUpperTail(statistic, 2 * times.length),
    },
    laplace: { z, p: normalCdf(z) },
  };
};
