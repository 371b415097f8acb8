/** A seed gives the same run again. */
export type Chance = {
  readonly below: (limit: number) => number;
  readonly oneOf: <A>(list: readonly A[]) => A;
  readonly often: (share: number) => boolean;
};

/** Mulberry32, public domain: small, and good enough to pick what to send. */
export const chanceFrom = (seed: number): Chance => {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (limit: number): number => Math.floor(next() * limit);
  return {
    below,
    often: (share) => next() < share,
    oneOf: <A>(list: readonly A[]): A => {
      const one = list[below(list.length)];
      if (one === undefined) throw new Error('Nothing to choose from');
      return one;
    },
  };
};
