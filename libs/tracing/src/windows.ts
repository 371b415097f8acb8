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
/** So many of the likeliest stretches, at a quick look, are judged with everything refitted. */
const JUDGED_FULLY = 20;

type Stretch = {
  readonly from: number;
  readonly to: number;
  readonly prior: number;
  readonly logRatios: readonly number[];
};

export const windowOf = (
  association: Association,
  slices: readonly Slice[],
  claimed: readonly ClaimedUnit[],
): Window | null => {
  const bySlice = slices.map((_, slice) =>
    claimed.flatMap((unit, place) => (unit.slice === slice ? [place] : [])),
  );
  const splitOf = (stretch: Stretch): Split => splitOfSlices(slices, bySlice, stretch);
  const quick = byWeight(allStretches(slices, bySlice, association));
  const judged = byWeight([
    ...quick
      .slice(0, JUDGED_FULLY)
      .map((stretch) => ({ ...stretch, logRatios: association.full(splitOf(stretch)) })),
    ...quick.slice(JUDGED_FULLY),
  ]);
  const [best] = judged;
  if (best === undefined) return null;

  return {
    from: best.from,
    to: best.to,
    split: splitOf(best),
    logRatios: best.logRatios.map((_, effect) =>
      logSum(judged.map(({ prior, logRatios }) => prior + (logRatios[effect] ?? 0))),
    ),
    widest: widestOf(judged),
  };
};

const byWeight = (stretches: readonly Stretch[]): readonly Stretch[] =>
  [...stretches].sort((one, other) => weightOf(other) - weightOf(one));

const weightOf = ({ prior, logRatios }: Stretch): number => prior + logSum(logRatios);

/** Every run of slices that starts and ends with a claim, but for the whole time. Every length is held as likely as every other. */
const allStretches = (
  slices: readonly Slice[],
  bySlice: readonly (readonly number[])[],
  association: Association,
): readonly Stretch[] => {
  const scale = Math.log(slices.length);
  const stretches: Stretch[] = [];
  for (let from = 0; from < slices.length; from++) {
    const cells = new Map<number, { stratum: number; units: number; partly: number }>();
    const places: number[] = [];
    for (let to = from; to < slices.length; to++) {
      grow(cells, slices[to]);
      places.push(...(bySlice[to] ?? []));
      if (places.length === 0 || (from === 0 && to === slices.length - 1)) continue;
      const length = to - from + 1;
      stretches.push({
        from,
        to,
        prior: -scale - Math.log(slices.length - length + 1),
        logRatios: association.quick({ cells: [...cells.values()], claimed: places, partly: [] }),
      });
    }
  }
  return stretches;
};

const grow = (
  cells: Map<number, { stratum: number; units: number; partly: number }>,
  slice: Slice | undefined,
): void => {
  for (const { stratum, units } of slice?.cells ?? []) {
    const cell = cells.get(stratum) ?? { stratum, units: 0, partly: 0 };
    cell.units += units;
    cells.set(stratum, cell);
  }
};

const splitOfSlices = (
  slices: readonly Slice[],
  bySlice: readonly (readonly number[])[],
  { from, to }: { readonly from: number; readonly to: number },
): Split => {
  const cells = new Map<number, { stratum: number; units: number; partly: number }>();
  for (const slice of slices.slice(from, to + 1)) grow(cells, slice);
  const all: readonly GroupCell[] = [...cells.values()];
  return { cells: all, claimed: bySlice.slice(from, to + 1).flat(), partly: [] };
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
