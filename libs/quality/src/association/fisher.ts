import { logChoose } from '../distributions';
import { crossing } from '../root';
import { sum } from '../sums';
import type { TwoByTwo } from './two-by-two';

export type Side = 'greater' | 'less' | 'two-sided';

/** Tables as likely as the observed one count as such: without this factor rounding would lose them (R 4, fisher.test). */
const AS_LIKELY = 1 + 1e-7;

/** What the first cell may be while all margins stay, and the log weight of each. */
type Margins = { readonly low: number; readonly logs: readonly number[] };

/**
 * Fisher's exact test (Fisher 1935): how often a table at least as far out comes about by chance alone when all margins
 * are given. Two-sided: all tables no likelier than the observed one.
 */
export const fisherExact = (table: TwoByTwo, side: Side = 'two-sided'): number => {
  const margins = marginsOf(table);
  const chances = chancesAt(margins, 0);
  const at = table[0][0] - margins.low;
  if (side === 'less') return Math.min(1, sum(chances.slice(0, at + 1)));
  if (side === 'greater') return Math.min(1, sum(chances.slice(at)));

  const observed = (chances[at] ?? 0) * AS_LIKELY;
  return Math.min(1, sum(chances.filter((chance) => chance <= observed)));
};

/**
 * The conditional maximum likelihood odds ratio: the one under which the first cell's mean is what was seen.
 * It is another number than ad/bc (6.408, not 9, for the tea table).
 */
export const conditionalOddsRatio = (table: TwoByTwo): number => {
  const margins = marginsOf(table);
  const at = table[0][0] - margins.low;
  if (at === 0) return 0;
  if (at === margins.logs.length - 1) return Infinity;

  return Math.exp(crossing((logOdds) => meanAt(margins, logOdds) - at, -LOG_REACH, LOG_REACH));
};

/** Exact conditional interval of the odds ratio (Cornfield 1956). One-sided: the other bound is 0 or infinite. */
export const conditionalOddsInterval = (
  table: TwoByTwo,
  confidence = 0.95,
  side: Side = 'two-sided',
): { readonly low: number; readonly high: number } => {
  const margins = marginsOf(table);
  const at = table[0][0] - margins.low;
  const tail = side === 'two-sided' ? (1 - confidence) / 2 : 1 - confidence;
  const least = side === 'less' || at === 0;
  const most = side === 'greater' || at === margins.logs.length - 1;
  return {
    low: least ? 0 : oddsWhere((logOdds) => sum(chancesAt(margins, logOdds).slice(at)) - tail),
    high: most ? Infinity : oddsWhere((logOdds) => sum(chancesAt(margins, logOdds).slice(0, at + 1)) - tail),
  };
};

const LOG_REACH = 50;

const oddsWhere = (f: (logOdds: number) => number): number => Math.exp(crossing(f, -LOG_REACH, LOG_REACH));

const marginsOf = ([[a, b], [c, d]]: TwoByTwo): Margins => {
  const [row, other, column] = [a + b, c + d, a + c];
  const low = Math.max(0, column - other);
  const high = Math.min(row, column);
  const logs = Array.from(
    { length: high - low + 1 },
    (_, at) => logChoose(row, low + at) + logChoose(other, column - low - at),
  );
  return { low, logs };
};

/** Chance of each table when the log odds ratio is as given; scaled by the largest, so that nothing overflows. */
const chancesAt = ({ logs }: Margins, logOdds: number): readonly number[] => {
  const tilted = logs.map((log, at) => log + at * logOdds);
  const top = tilted.reduce((most, each) => Math.max(most, each), -Infinity);
  const weights = tilted.map((each) => Math.exp(each - top));
  const total = sum(weights);
  return weights.map((weight) => weight / total);
};

const meanAt = (margins: Margins, logOdds: number): number =>
  sum(chancesAt(margins, logOdds).map((chance, at) => chance * at));
