import type { Association, Split } from './association';
import { logSum } from './log-space';
import type { ClaimedUnit, GroupCell, Slice } from './trace-counts';

/** A stretch of time in which something was wrong, and what speaks for it, all stretches weighed together. */
export type Window = {
  /** The likeliest stretch: slices, both within. */
  readonly from: number;
  readonly to: number;
  readonly split: Split;
  /** Log likelihood ratio by effect, over every stretch by how likely it was held. */
  readonly logRatios: readonly number[];
  /** The narrowest run of slices that holds nearly all likely stretches: who cannot be excluded. */
  readonly widest: { readonly from: number; readonly to: number };
};

/** What the widest stretch may leave out. */
const LEFT_OUT = 0.01;
/** So many of the likeliest stretches are judged fully; what that changes is applied to all. */
const JUDGED_FULLY = 3;

type Stretch = {
  readonly from: number;
  readonly to: number;
  readonly prior: number;
  readonly quick: readonly number[];
};

export const windowOf = (
  association: Association,
  slices: readonly Slice[],
  claimed: readonly ClaimedUnit[],
): Window | null => {
  const bySlice = slices.map((_, slice) =>
    claimed.flatMap((unit, place) => (unit.slice === slice ? [place] : [])),
  );
  const stretches = allStretches(slices, bySlice, association);
  const ranked = [...stretches].sort((one, other) => weightOf(other) - weightOf(one));
  const [best] = ranked;
  if (best === undefined) return null;

  const splitOf = ({ from, to }: Stretch): Split => splitOfSlices(slices, bySlice, { from, to });
  const changes = ranked.slice(0, JUDGED_FULLY).map((stretch) => {
    const full = association.full(splitOf(stretch));
    return full.map((log, effect) => log - (stretch.quick[effect] ?? 0));
  });
  return {
    from: best.from,
    to: best.to,
    split: splitOf(best),
    logRatios: best.quick.map((_, effect) => {
      const change = changes.reduce((sum, one) => sum + (one[effect] ?? 0), 0) / changes.length;
      return change + logSum(stretches.map(({ prior, quick }) => prior + (quick[effect] ?? 0)));
    }),
    widest: widestOf(ranked),
  };
};

const weightOf = ({ prior, quick }: Stretch): number => prior + logSum(quick);

/** Every run of slices that starts and ends with a claim, but for the whole time. Short ones are held likelier. */
const allStretches = (
  slices: readonly Slice[],
  bySlice: readonly (readonly number[])[],
  association: Association,
): readonly Stretch[] => {
  const scale = logSum(slices.map((_, at) => -Math.log(at + 1)));
  const stretches: Stretch[] = [];
  for (let from = 0; from < slices.length; from++) {
    const cells = new Map<number, { stratum: number; units: number; unclear: number }>();
    const places: number[] = [];
    for (let to = from; to < slices.length; to++) {
      grow(cells, slices[to]);
      places.push(...(bySlice[to] ?? []));
      if (places.length === 0 || (from === 0 && to === slices.length - 1)) continue;
      const length = to - from + 1;
      stretches.push({
        from,
        to,
        prior: -Math.log(length) - scale - Math.log(slices.length - length + 1),
        quick: association.quick({ cells: [...cells.values()], claimed: places, unclear: [] }),
      });
    }
  }
  return stretches;
};

const grow = (
  cells: Map<number, { stratum: number; units: number; unclear: number }>,
  slice: Slice | undefined,
): void => {
  for (const { stratum, units } of slice?.cells ?? []) {
    const cell = cells.get(stratum) ?? { stratum, units: 0, unclear: 0 };
    cell.units += units;
    cells.set(stratum, cell);
  }
};

const splitOfSlices = (
  slices: readonly Slice[],
  bySlice: readonly (readonly number[])[],
  { from, to }: { readonly from: number; readonly to: number },
): Split => {
  const cells = new Map<number, { stratum: number; units: number; unclear: number }>();
  for (const slice of slices.slice(from, to + 1)) grow(cells, slice);
  const all: readonly GroupCell[] = [...cells.values()];
  return { cells: all, claimed: bySlice.slice(from, to + 1).flat(), unclear: [] };
};

const widestOf = (ranked: readonly Stretch[]): { readonly from: number; readonly to: number } => {
  const total = logSum(ranked.map(weightOf));
  let covered = 0;
  let from = Infinity;
  let to = -Infinity;
  for (const stretch of ranked) {
    if (covered >= 1 - LEFT_OUT) break;
    covered += Math.exp(weightOf(stretch) - total);
    from = Math.min(from, stretch.from);
    to = Math.max(to, stretch.to);
  }
  return { from, to };
};
