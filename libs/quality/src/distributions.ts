import { chdtri, incbi, ndtr, ndtri } from 'cephes';

/** The one place that knows the distribution library and its names. */

/** P(Z <= z). */
export const normalCdf = (z: number): number => ndtr(z);

/** P(Z > z), without the cancellation of 1 - P(Z <= z) far out. */
export const normalUpperTail = (z: number): number => ndtr(-z);

/** The z below which a share `p` lies. */
export const normalQuantile = (p: number): number => ndtri(p);

export const betaQuantile = (p: number, a: number, b: number): number => incbi(a, b, p);

/** The x above which a share `p` of chi-square lies. */
export const chiSquareUpperQuantile = (p: number, degreesOfFreedom: number): number =>
  chdtri(degreesOfFreedom, p);
