import { binomialProbability, poissonCdf, poissonProbability, poissonUpperTail } from '../distributions';
import { clopperPearson, poissonExact } from '../intervals';
import type { Estimate } from './two-by-two';

/** Events over the time or units in which they could happen: claims over home-months. */
export type Exposed = { readonly count: number; readonly exposure: number };

/** Counts as likely as the observed one count as such (R 4, poisson.test and binom.test). */
const AS_LIKELY = 1 + 1e-7;

/** Events per unit of exposure, exact interval (Garwood 1936). */
export const poissonRate = ({ count, exposure }: Exposed, confidence = 0.95): Estimate => {
  const { low, high } = poissonExact(count, confidence);
  return { value: count / exposure, low: low / exposure, high: high / exposure };
};

/** Exact two-sided test of a rate against one that is given: all counts no likelier than the observed one. */
export const poissonTest = ({ count, exposure }: Exposed, rate: number): number => {
  const mean = rate * exposure;
  if (count === mean) return 1;
  const limit = poissonProbability(count, mean) * AS_LIKELY;
  if (count > mean)
    return Math.min(1, poissonUpperTail(count - 1, mean) + poissonCdf(lastBelow(limit, mean), mean));

  return Math.min(1, poissonCdf(count, mean) + poissonUpperTail(firstAbove(limit, mean) - 1, mean));
};

/** The largest count under the mean that is no likelier than the limit; -1 for none. */
const lastBelow = (limit: number, mean: number): number => {
  let at = Math.floor(mean);
  while (at >= 0 && poissonProbability(at, mean) > limit) at -= 1;
  return at;
};

const firstAbove = (limit: number, mean: number): number => {
  let at = Math.ceil(mean);
  while (poissonProbability(at, mean) > limit) at += 1;
  return at;
};

/** How many times the second rate the first is; exact, given the sum of both counts (Przyborowski and Wilenski 1940). */
export const rateRatio = (
  first: Exposed,
  second: Exposed,
  confidence = 0.95,
): Estimate & { readonly p: number } => {
  const of = first.count + second.count;
  const share = clopperPearson({ count: first.count, of }, confidence);
  const ratio = (part: number | null): number =>
    part === null ? NaN : ((part / (1 - part)) * second.exposure) / first.exposure;
  return {
    value: first.count / first.exposure / (second.count / second.exposure),
    low: ratio(share.low),
    high: ratio(share.high),
    p: binomialTest(first.count, of, first.exposure / (first.exposure + second.exposure)),
  };
};

/** Exact two-sided: all counts no likelier than the observed one. */
export const binomialTest = (count: number, of: number, p: number): number => {
  const limit = binomialProbability(count, of, p) * AS_LIKELY;
  let total = 0;
  for (let at = 0; at <= of; at += 1) {
    const chance = binomialProbability(at, of, p);
    if (chance <= limit) total += chance;
  }
  return Math.min(1, total);
};
