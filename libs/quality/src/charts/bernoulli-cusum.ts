/**
 * Unit by unit: each section counts the moment it leaves, without waiting for a week to fill
 * (Reynolds and Stoumbos 1999, "A CUSUM chart for monitoring a proportion when inspecting continuously").
 *
 * The score of a defective unit is `gain` steps, that of a good one -1 step, never below 0: whole numbers, so that its run
 * length is known exactly. A signal is a score of at least `limit`.
 */
export type UnitCusum = { readonly gain: number; readonly limit: number };

/** Scores as they stand after each unit, and where it signalled. After a signal it starts anew from 0. */
export type UnitCusumRun = { readonly scores: readonly number[]; readonly signals: readonly number[] };

/**
 * Steps a defective unit is worth so that a change from share `before` to share `after` is found soonest:
 * the ratio of both log likelihood scores, to the nearest whole number.
 */
export const gainFor = (before: number, after: number): number => {
  const good = Math.log((1 - before) / (1 - after));
  const bad = Math.log((after * (1 - before)) / (before * (1 - after)));
  return Math.max(1, Math.round(bad / good) - 1);
};

export const runUnitCusum = (defective: readonly boolean[], { gain, limit }: UnitCusum): UnitCusumRun => {
  let score = 0;
  const signals: number[] = [];
  const scores = defective.map((bad, at) => {
    score = bad ? score + gain : Math.max(0, score - 1);
    const now = score;
    if (now >= limit) {
      signals.push(at);
      score = 0;
    }
    return now;
  });
  return { scores, signals };
};

/** Since when the score that ended at `at` has been above 0: the best guess of when the change came. */
export const changeBefore = (scores: readonly number[], at: number): number => {
  let start = at;
  while (start > 0 && (scores[start - 1] ?? 0) > 0) start -= 1;
  return start;
};

/**
 * Average number of units up to a signal, started at 0, when a share `p` is defective. Exact: the score is a Markov chain
 * that goes down one step at a time, so that the time from a state is a known multiple of the time from the state below.
 */
export const unitCusumRunLength = ({ gain, limit }: UnitCusum, p: number): number => {
  if (p <= 0) return Infinity;
  // From state i on: time = fixed[i] + kept[i] * (time from i - 1). States from `limit` up are signals: no time.
  const fixed = new Float64Array(limit);
  const kept = new Float64Array(limit);
  for (let at = limit - 1; at > 0; at -= 1) {
    const up = fromAbove({ fixed, kept }, at, gain);
    const stays = 1 - p * up.kept;
    fixed[at] = (1 + p * up.fixed) / stays;
    kept[at] = (1 - p) / stays;
  }
  const up = fromAbove({ fixed, kept }, 0, gain);
  return (1 + p * up.fixed) / (p * (1 - up.kept));
};

type Chain = { readonly fixed: Float64Array; readonly kept: Float64Array };

/** The time from `at + gain`, as a fixed part and a multiple of the time from `at`. */
const fromAbove = (
  { fixed, kept }: Chain,
  at: number,
  gain: number,
): { readonly fixed: number; readonly kept: number } => {
  if (at + gain >= fixed.length) return { fixed: 0, kept: 0 };
  let [time, share] = [0, 1];
  for (let state = at + gain; state > at; state -= 1) {
    time += share * (fixed[state] ?? 0);
    share *= kept[state] ?? 0;
  }
  return { fixed: time, kept: share };
};

/** The lowest limit with at least this many units, on average, between false signals. */
export const limitFor = (gain: number, share: number, unitsBetween: number): number => {
  let [low, high] = [1, 2];
  while (unitCusumRunLength({ gain, limit: high }, share) < unitsBetween) high *= 2;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (unitCusumRunLength({ gain, limit: middle }, share) < unitsBetween) low = middle + 1;
    else high = middle;
  }
  return low;
};
