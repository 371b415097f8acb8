import { chiSquareUpperTail, normalReach } from '../distributions';
import { totalOf } from './two-by-two';
import type { Estimate, TwoByTwo } from './two-by-two';

/** Shares with the event among exposed and unexposed, compared. Large-sample intervals: not for cells below five. */
export type RiskComparison = {
  readonly exposed: number;
  readonly unexposed: number;
  /** Interval on the log scale (Katz 1978). */
  readonly relativeRisk: Estimate & { readonly standardErrorOfLog: number };
  /** Interval on the log scale (Woolf 1955). */
  readonly oddsRatio: Estimate & { readonly standardErrorOfLog: number };
  /** Wald's interval. */
  readonly riskDifference: Estimate & { readonly standardError: number };
};

export const compareRisks = (table: TwoByTwo, confidence = 0.95): RiskComparison => {
  const [[a, b], [c, d]] = table;
  const z = normalReach(confidence);
  const [exposed, unexposed] = [a / (a + b), c / (c + d)];
  const ofRisk = Math.sqrt(1 / a - 1 / (a + b) + 1 / c - 1 / (c + d));
  const ofOdds = Math.sqrt(1 / a + 1 / b + 1 / c + 1 / d);
  const ofDifference = Math.sqrt(
    (exposed * (1 - exposed)) / (a + b) + (unexposed * (1 - unexposed)) / (c + d),
  );
  const difference = exposed - unexposed;
  return {
    exposed,
    unexposed,
    relativeRisk: { ...onLogScale(exposed / unexposed, ofRisk, z), standardErrorOfLog: ofRisk },
    oddsRatio: { ...onLogScale((a * d) / (b * c), ofOdds, z), standardErrorOfLog: ofOdds },
    riskDifference: {
      value: difference,
      low: difference - z * ofDifference,
      high: difference + z * ofDifference,
      standardError: ofDifference,
    },
  };
};

export const onLogScale = (value: number, standardErrorOfLog: number, z: number): Estimate => ({
  value,
  low: value * Math.exp(-z * standardErrorOfLog),
  high: value * Math.exp(z * standardErrorOfLog),
});

/** A statistic that falls as chi-square has it when nothing is the matter, and the chance of one as large. */
export type ChiSquare = {
  readonly statistic: number;
  readonly degreesOfFreedom: number;
  readonly p: number;
};

export const chiSquareOf = (statistic: number, degreesOfFreedom: number): ChiSquare => ({
  statistic,
  degreesOfFreedom,
  p: chiSquareUpperTail(statistic, degreesOfFreedom),
});

/** Pearson's chi-square; `corrected` takes half a unit off (Yates 1934). */
export const pearsonChiSquare = (table: TwoByTwo, corrected = false): ChiSquare => {
  const [[a, b], [c, d]] = table;
  const total = totalOf(table);
  const apart = Math.max(0, Math.abs(a * d - b * c) - (corrected ? total / 2 : 0));
  return chiSquareOf((total * apart * apart) / ((a + b) * (c + d) * (a + c) * (b + d)), 1);
};

/** Likelihood ratio statistic G squared. */
export const likelihoodRatio = (table: TwoByTwo): ChiSquare => {
  const [[a, b], [c, d]] = table;
  const total = totalOf(table);
  const term = (seen: number, row: number, column: number): number =>
    seen === 0 ? 0 : seen * Math.log((seen * total) / (row * column));
  const halves =
    term(a, a + b, a + c) + term(b, a + b, b + d) + term(c, c + d, a + c) + term(d, c + d, b + d);
  return chiSquareOf(2 * halves, 1);
};
