/** Keys in order of rank; those that nothing tells apart stand together. */
export type RankedKeys = { readonly keys: readonly string[]; readonly probability: number };

type Weighed = { readonly key: string; readonly homes: string; readonly signs: number; readonly log: number };

/** Ten to one is where evidence is commonly called strong (H. Jeffreys, from memory). */
const TELLING_ODDS = 10;

/** The oracle's ties, by the rule the issue states: the very same homes, and no record that tells one from the other. */
export const tiesOf = (weighed: readonly Weighed[]): readonly RankedKeys[] => {
  const top = Math.max(...weighed.map(({ log }) => log));
  const sorted = [...weighed].sort((one, other) => other.log - one.log);
  const ties: { head: Weighed; keys: string[]; probability: number }[] = [];
  for (const one of sorted) {
    const tie = ties.find(
      ({ head }) =>
        head.homes === one.homes &&
        Math.abs(head.signs - one.signs) < Math.log(TELLING_ODDS) &&
        one.log > head.log - Math.log(20),
    );
    const probability = Math.exp(one.log - top);
    if (tie === undefined) ties.push({ head: one, keys: [one.key], probability });
    else {
      tie.keys.push(one.key);
      tie.probability += probability;
    }
  }
  const total = ties.reduce((sum, { probability }) => sum + probability, 0);
  return ties
    .map(({ keys, probability }) => ({ keys, probability: probability / total }))
    .sort((one, other) => other.probability - one.probability);
};
