/**
 * Screening many causes at once: p values adjusted for their number, in the order they came in.
 * Reject where the adjusted value is at most the level asked for.
 */
export type Adjusted = readonly number[];

/** Benjamini and Hochberg (1995): of what is named, at most this share is named wrongly. */
export const benjaminiHochberg = (ps: readonly number[]): Adjusted =>
  fromLargest(ps, (rank) => ps.length / rank);

/** Benjamini and Yekutieli (2001): the same whatever the tests have to do with each other. */
export const benjaminiYekutieli = (ps: readonly number[]): Adjusted => {
  const harmonic = ps.reduce((total, _, at) => total + 1 / (at + 1), 0);
  return fromLargest(ps, (rank) => (harmonic * ps.length) / rank);
};

/** Hochberg (1988). */
export const hochberg = (ps: readonly number[]): Adjusted => fromLargest(ps, (rank) => ps.length - rank + 1);

/** Holm (1979). */
export const holm = (ps: readonly number[]): Adjusted => {
  let least = 0;
  return inOrder(ps, (p, at) => {
    least = Math.max(least, Math.min(1, (ps.length - at) * p));
    return least;
  });
};

export const bonferroni = (ps: readonly number[]): Adjusted => ps.map((p) => Math.min(1, p * ps.length));

/** Indices, from 0, of what is rejected. */
export const rejectedAt = (adjusted: Adjusted, level: number): readonly number[] =>
  adjusted.flatMap((p, at) => (p <= level ? [at] : []));

/** Steps down from the largest p, never above the one before; `times` is told the rank from 1. */
const fromLargest = (ps: readonly number[], times: (rank: number) => number): Adjusted => {
  const order = ranked(ps);
  const adjusted = new Array<number>(ps.length);
  let most = 1;
  for (const [back, at] of order.toReversed().entries()) {
    const rank = ps.length - back;
    most = Math.min(most, times(rank) * (ps[at] ?? 1));
    adjusted[at] = most;
  }
  return adjusted;
};

const inOrder = (ps: readonly number[], adjust: (p: number, at: number) => number): Adjusted => {
  const adjusted = new Array<number>(ps.length);
  for (const [rank, at] of ranked(ps).entries()) adjusted[at] = adjust(ps[at] ?? 1, rank);
  return adjusted;
};

const ranked = (ps: readonly number[]): readonly number[] =>
  ps.map((_, at) => at).sort((a, b) => (ps[a] ?? 0) - (ps[b] ?? 0) || a - b);
