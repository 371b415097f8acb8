import { binomialCdf, normalCdf, normalUpperTail } from './distributions';

/** Points, on average, to a signal of a chart whose points are independent. */
export const shewhartRunLength = (chanceAPoint: number): number => 1 / chanceAPoint;

/** Chance that a normal point is beyond limits this many standard deviations away. */
export const chanceBeyond = (width: number): number => 2 * normalUpperTail(width);

/**
 * Average run length of a one-sided CUSUM of normal values in standard deviations, started at 0, `shift` from the target.
 * Page's integral equation, by Gauss and Legendre's quadrature (Vance 1986): good to a dozen digits.
 */
export const cusumRunLength = ({
  slack,
  limit,
  shift = 0,
}: {
  readonly slack: number;
  readonly limit: number;
  readonly shift?: number;
}): number => {
  const drift = shift - slack;
  const nodes = [{ x: 0, weight: 0 }, ...legendre(NODES, limit)];
  const matrix = nodes.map((from, row) =>
    nodes.map((to, column) => {
      const same = row === column ? 1 : 0;
      const toZero = column === 0 ? normalCdf(-drift - from.x) : 0;
      return same - toZero - to.weight * density(to.x - from.x - drift);
    }),
  );
  return (
    solve(
      matrix,
      nodes.map(() => 1),
    )[0] ?? NaN
  );
};

const NODES = 48;

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** Nodes and weights on 0 to `end`: roots of the Legendre polynomial, by Newton's method. */
const legendre = (count: number, end: number): readonly { readonly x: number; readonly weight: number }[] =>
  Array.from({ length: count }, (_, at) => {
    let root = Math.cos((Math.PI * (at + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 20; step += 1) {
      const value = polynomial(count, root);
      slope = (count * (root * value.at - value.before)) / (root * root - 1);
      root -= value.at / slope;
    }
    return { x: (end * (1 - root)) / 2, weight: end / ((1 - root * root) * slope * slope) };
  });

const polynomial = (degree: number, x: number): { readonly at: number; readonly before: number } => {
  let [before, at] = [1, x];
  for (let n = 2; n <= degree; n += 1) [before, at] = [at, ((2 * n - 1) * x * at - (n - 1) * before) / n];
  return { at, before };
};

/** Both sides together (Van Dobben de Bruyn 1968): the rates of false signals add up. */
export const twoSidedRunLength = (up: number, down: number): number => 1 / (1 / up + 1 / down);

/** Gauss elimination with pivots; the matrix is a copy. */
const solve = (matrix: number[][], right: number[]): readonly number[] => {
  const rows = matrix.map((row, at) => [...row, right[at] ?? 0]);
  const size = rows.length;
  for (let column = 0; column < size; column += 1) {
    const pivot = rows.slice(column).reduce((best, row) => larger(best, row, column));
    rows.splice(rows.indexOf(pivot), 1);
    rows.splice(column, 0, pivot);
    for (const row of rows.slice(column + 1)) eliminate(row, pivot, column);
  }
  const answer = new Array<number>(size).fill(0);
  for (let at = size - 1; at >= 0; at -= 1) {
    const row = rows[at] ?? [];
    let rest = row[size] ?? 0;
    for (let to = at + 1; to < size; to += 1) rest -= (row[to] ?? 0) * (answer[to] ?? 0);
    answer[at] = rest / (row[at] ?? NaN);
  }
  return answer;
};

const larger = (a: number[], b: number[], column: number): number[] =>
  Math.abs(b[column] ?? 0) > Math.abs(a[column] ?? 0) ? b : a;

const eliminate = (row: number[], pivot: readonly number[], column: number): void => {
  const times = (row[column] ?? 0) / (pivot[column] ?? NaN);
  for (let at = column; at < row.length; at += 1) row[at] = (row[at] ?? 0) - times * (pivot[at] ?? 0);
};

/** Chance that a subgroup of `of` units shows more than `most` or fewer than `least` when the share is `share`. */
export const chanceOutside = (
  of: number,
  share: number,
  { least, most }: { readonly least: number; readonly most: number },
): number => 1 - binomialCdf(most, of, share) + binomialCdf(least - 1, of, share);
