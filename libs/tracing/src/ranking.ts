import type { Posterior, Weighed } from './posterior';

/** Causes that nothing on record tells apart share a rank. */
export type Ranked = {
  readonly rank: number;
  readonly tied: readonly Weighed[];
  readonly probability: number;
};

/** Signs that favour one of two causes with the very same homes by less than this tell nothing (common practice, no published source). */
const ODDS_THAT_TELL = 10;
/** A cause with the same homes that is this much less likely beforehand is no rival. */
const NO_RIVAL = 1 / 20;

/**
 * Likeliest first. Two causes with the very same homes are told apart only by reports or records; else they are tied,
 * and their likelihood is that of the tie.
 */
export const rankingOf = ({ weighed }: Posterior): readonly Ranked[] => {
  const bySet = new Map<string, Weighed[]>();
  for (const one of weighed) {
    const set = bySet.get(one.sameHomes);
    if (set === undefined) bySet.set(one.sameHomes, [one]);
    else set.push(one);
  }
  return [...bySet.values()]
    .flatMap(tiesIn)
    .map((tied) => ({ tied, probability: tied.reduce((sum, { probability }) => sum + probability, 0) }))
    .sort((one, other) => other.probability - one.probability || compareKeys(one.tied, other.tied))
    .map(({ tied, probability }, at) => ({ rank: at + 1, tied, probability }));
};

const compareKeys = ([one]: readonly Weighed[], [other]: readonly Weighed[]): number =>
  (one?.key ?? '') < (other?.key ?? '') ? -1 : 1;

const tiesIn = (set: readonly Weighed[]): readonly (readonly Weighed[])[] => {
  const waiting = [...set].sort((a, b) => b.probability - a.probability || (a.key < b.key ? -1 : 1));
  const ties: Weighed[][] = [];
  for (const one of waiting) {
    const tie = ties.find(([head]) => head !== undefined && isTied(one, head));
    if (tie === undefined) ties.push([one]);
    else tie.push(one);
  }
  return ties;
};

const isTied = (one: Weighed, head: Weighed): boolean =>
  Math.abs(one.logSigns - head.logSigns) < Math.log(ODDS_THAT_TELL) &&
  one.probability >= head.probability * NO_RIVAL;
