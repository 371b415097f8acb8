/** How often each thing was seen. */
export type Tally = { readonly key: string; readonly count: number };
export type ParetoRow = Tally & { readonly share: number; readonly cumulative: number };

export type Pareto = {
  readonly total: number;
  /** Worst first; equal counts by key, so that two readers see the same order. */
  readonly rows: readonly ParetoRow[];
};

/** Shares come from whole counts, so that a line drawn at 80 % is met by 240 of 300 exactly. With no counts all are 0. */
export const pareto = (tallies: readonly Tally[]): Pareto => {
  const ordered = [...tallies].sort(worstFirst);
  const total = ordered.reduce((sum, { count }) => sum + count, 0);
  let sofar = 0;
  const rows = ordered.map((tally) => {
    sofar += tally.count;
    return { ...tally, share: part(tally.count, total), cumulative: part(sofar, total) };
  });
  return { total, rows };
};

/** Each count times what one of its kind costs, in the plant's own unit; what has no cost given counts once. */
export const weighted = (
  tallies: readonly Tally[],
  costs: Readonly<Record<string, number>>,
): readonly Tally[] => tallies.map(({ key, count }) => ({ key, count: count * (costs[key] ?? 1) }));

/** The fewest of the worst that make up this share: 80 % reached exactly is reached. */
export const vitalFew = (rows: readonly ParetoRow[], upTo = 0.8): readonly ParetoRow[] =>
  rows.filter(
    ({ cumulative, share }, at) =>
      share > 0 && (at === 0 || (rows[at - 1]?.cumulative ?? 0) < upTo) && cumulative > 0,
  );

/** The first `top` of them, and the rest together, last whatever its size. */
export const topAndRest = (
  rows: readonly ParetoRow[],
  top: number,
): { readonly top: readonly ParetoRow[]; readonly rest: number } => ({
  top: rows.slice(0, top),
  rest: rows.slice(top).reduce((sum, { count }) => sum + count, 0),
});

const part = (count: number, total: number): number => (total === 0 ? 0 : count / total);

const worstFirst = (a: Tally, b: Tally): number =>
  b.count - a.count || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0);
