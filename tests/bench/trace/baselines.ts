import type { TraceInput } from '@libs/tracing';
import type { RankedKeys } from './ties';

/** What a plant without a tracer does: look for the station, or the lot, that turns up most among the claims. */
export const baselines = (
  input: TraceInput,
): { readonly station: readonly RankedKeys[]; readonly lot: readonly RankedKeys[] } => {
  const claimed = new Set(input.claims.map(({ home }) => home));
  const defects = new Map<string, number>();
  const lots = new Map<string, number>();
  for (const home of input.homes) {
    for (const row of home.work) {
      if (row.marks.includes('defect') || row.marks.includes('reworked')) add(defects, row.station);
    }
    if (!claimed.has(home.home)) continue;
    for (const { operation, lots: used } of home.work) {
      used.forEach((lot) => add(lots, `${operation}/lot/${lot}`));
    }
  }
  return { station: ranked(defects), lot: ranked(lots) };
};

const add = (counts: Map<string, number>, key: string): void => {
  counts.set(key, (counts.get(key) ?? 0) + 1);
};

const ranked = (counts: ReadonlyMap<string, number>): readonly RankedKeys[] =>
  [...counts]
    .sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1))
    .map(([key, count]) => ({ keys: [key], probability: count }));
