import { bdtr, chdtrc, chdtri, igam, incbet, incbi, lgam, ndtr, ndtri, pdtr } from 'cephes';

/** The one place that knows the distribution library and its names. Probabilities in and out are between 0 and 1. */

/** P(Z <= z). */
export const normalCdf = (z: number): number => ndtr(z);

/** P(Z > z), without the cancellation of 1 - P(Z <= z) far out. */
export const normalUpperTail = (z: number): number => ndtr(-z);

/** The z below which a share `p` lies. */
export const normalQuantile = (p: number): number => ndtri(p);

/** The z that a two-sided interval of this confidence reaches to: 1.96 at 0.95. */
export const normalReach = (confidence: number): number => ndtri(1 - (1 - confidence) / 2);

export const betaCdf = (x: number, a: number, b: number): number => incbet(a, b, x);
export const betaQuantile = (p: number, a: number, b: number): number => incbi(a, b, p);

/** P(X > x) of chi-square. */
export const chiSquareUpperTail = (x: number, degreesOfFreedom: number): number =>
  x <= 0 ? 1 : chdtrc(degreesOfFreedom, x);

/** The x above which a share `p` of chi-square lies. */
export const chiSquareUpperQuantile = (p: number, degreesOfFreedom: number): number =>
  chdtri(degreesOfFreedom, p);

/** P(X <= count) of `of` trials that succeed with chance `p`. */
export const binomialCdf = (count: number, of: number, p: number): number => {
  if (count < 0) return 0;
  return count >= of ? 1 : bdtr(Math.floor(count), of, p);
};

/** P(X = count) of a binomial. */
export const binomialProbability = (count: number, of: number, p: number): number => {
  if (p === 0 || p === 1) return count === (p === 0 ? 0 : of) ? 1 : 0;
  return Math.exp(logChoose(of, count) + count * Math.log(p) + (of - count) * Math.log1p(-p));
};

/** P(X <= count) of a Poisson count. */
export const poissonCdf = (count: number, mean: number): number => {
  if (count < 0) return 0;
  return mean === 0 ? 1 : pdtr(Math.floor(count), mean);
};

/** P(X > count) of a Poisson count, right far out as well. */
export const poissonUpperTail = (count: number, mean: number): number => {
  if (count < 0) return 1;
  return mean === 0 ? 0 : igam(Math.floor(count) + 1, mean);
};

/** P(X = count) of a Poisson count. */
export const poissonProbability = (count: number, mean: number): number => {
  if (mean === 0) return count === 0 ? 1 : 0;
  return Math.exp(count * Math.log(mean) - mean - lgam(count + 1));
};

/** log of the number of ways to choose. */
export const logChoose = (of: number, count: number): number =>
  lgam(of + 1) - lgam(count + 1) - lgam(of - count + 1);
