import { normalReach } from '../distributions';
import { sum } from '../sums';
import { chiSquareOf, onLogScale } from './risk';
import type { ChiSquare } from './risk';
import { totalOf } from './two-by-two';
import type { Estimate, TwoByTwo } from './two-by-two';

/**
 * One table a stratum (a month, a model), so that like is compared with like. Show the common figure only beside the
 * test of whether the strata agree (breslowDay): a mean of unlike things means nothing.
 */
export type Strata = readonly TwoByTwo[];

const over = (strata: Strata, term: (table: TwoByTwo, total: number) => number): number =>
  sum(strata.map((table) => term(table, totalOf(table))));

/** Common odds ratio (Mantel and Haenszel 1959), interval of Robins, Breslow and Greenland (1986). */
export const commonOddsRatio = (strata: Strata, confidence = 0.95): Estimate => {
  const r = over(strata, ([[a], [, d]], n) => (a * d) / n);
  const s = over(strata, ([[, b], [c]], n) => (b * c) / n);
  const pr = over(strata, ([[a], [, d]], n) => ((a + d) * a * d) / (n * n));
  const mixed = over(strata, ([[a, b], [c, d]], n) => ((a + d) * b * c + (b + c) * a * d) / (n * n));
  const qs = over(strata, ([[, b], [c]], n) => ((b + c) * b * c) / (n * n));
  const variance = pr / (2 * r * r) + mixed / (2 * r * s) + qs / (2 * s * s);
  return onLogScale(r / s, Math.sqrt(variance), normalReach(confidence));
};

/** Common relative risk, interval of Greenland and Robins (1985). */
export const commonRelativeRisk = (strata: Strata, confidence = 0.95): Estimate => {
  const r = over(strata, ([[a], [c, d]], n) => (a * (c + d)) / n);
  const s = over(strata, ([[a, b], [c]], n) => (c * (a + b)) / n);
  const p = over(strata, ([[a, b], [c, d]], n) => ((a + b) * (c + d) * (a + c) - a * c * n) / (n * n));
  return onLogScale(r / s, Math.sqrt(p / (r * s)), normalReach(confidence));
};

/** Is there any association at all, strata held apart (Cochran 1954; Mantel and Haenszel 1959)? */
export const cochranMantelHaenszel = (strata: Strata, corrected = false): ChiSquare => {
  const apart = over(strata, ([[a, b], [c]], n) => a - ((a + b) * (a + c)) / n);
  const variance = over(
    strata,
    ([[a, b], [c, d]], n) => ((a + b) * (c + d) * (a + c) * (b + d)) / (n * n * (n - 1)),
  );
  const distance = Math.max(0, Math.abs(apart) - (corrected ? 0.5 : 0));
  return chiSquareOf((distance * distance) / variance, 1);
};

/** An interval from the test itself (Miettinen 1976): value to the power 1 +- z / sqrt(chi-square). */
export const testBasedInterval = (value: number, test: ChiSquare, confidence = 0.95): Estimate => {
  const reach = normalReach(confidence) / Math.sqrt(test.statistic);
  return { value, low: Math.pow(value, 1 - reach), high: Math.pow(value, 1 + reach) };
};

/** Do the strata agree on one odds ratio (Breslow and Day 1980)? Tarone's (1985) takes off what the estimate adds. */
export const breslowDay = (
  strata: Strata,
): { readonly breslowDay: ChiSquare; readonly tarone: ChiSquare } => {
  const odds = commonOddsRatio(strata).value;
  const parts = strata.map((table) => partOf(table, odds));
  const plain = sum(parts.map(({ apart, variance }) => (apart * apart) / variance));
  const apart = sum(parts.map((part) => part.apart));
  const variance = sum(parts.map((part) => part.variance));
  return {
    breslowDay: chiSquareOf(plain, strata.length - 1),
    tarone: chiSquareOf(plain - (apart * apart) / variance, strata.length - 1),
  };
};

/** How far the first cell is from what this odds ratio would make it, margins kept. */
const partOf = (
  [[a, b], [c, d]]: TwoByTwo,
  odds: number,
): { readonly apart: number; readonly variance: number } => {
  const [row, other, column] = [a + b, c + d, a + c];
  const expected = expectedCell({ row, other, column }, odds);
  const variance =
    1 / (1 / expected + 1 / (row - expected) + 1 / (column - expected) + 1 / (other - column + expected));
  return { apart: a - expected, variance };
};

type CellMargins = { readonly row: number; readonly other: number; readonly column: number };

/** The root of A (other - column + A) = odds (row - A)(column - A) that lies inside the margins. */
const expectedCell = ({ row, other, column }: CellMargins, odds: number): number => {
  const square = 1 - odds;
  const linear = other - column + odds * (row + column);
  const constant = -odds * row * column;
  if (Math.abs(square) < 1e-12) return -constant / linear;

  const root = Math.sqrt(linear * linear - 4 * square * constant);
  return (-2 * constant) / (linear + root);
};
