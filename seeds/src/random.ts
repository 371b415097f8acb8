/** A source of chance that always gives the same for the same seed: the whole demonstration hangs from it. */
export type Chance = {
  /** From 0 up to, not including, 1. */
  readonly next: () => number;
  readonly yes: (probability: number) => boolean;
  /** A whole number, both ends included. */
  readonly between: (low: number, high: number) => number;
  readonly pick: <T>(list: readonly T[]) => T;
  /** How many of something that comes along at this mean rate. */
  readonly count: (mean: number) => number;
  readonly hex: (digits: number) => string;
  readonly bytes: (length: number) => Uint8Array;
  /** A source of its own, so that one part of the story can change without moving the others. */
  readonly branch: (name: string) => Chance;
};

type State = readonly [number, number, number, number];

/** FNV-1a with a finishing mix, four times over: spreads a name over the generator's whole state. */
const stateOf = (name: string): State => {
  const one = (basis: number): number => {
    let hash = basis >>> 0;
    for (let index = 0; index < name.length; index += 1) {
      hash = Math.imul(hash ^ name.charCodeAt(index), 16_777_619) >>> 0;
    }
    hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b) >>> 0;
    return (hash ^ (hash >>> 13)) >>> 0;
  };
  return [one(2_166_136_261), one(0x9e3779b9), one(0x7f4a7c15), one(0x94d049bb)];
};

/** The small fast counting generator (sfc32) by C. Doty-Humphrey: 32-bit integers only, so the same on every machine. */
const generator = (from: State): (() => number) => {
  let [a, b, c, counter] = from;
  const step = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    c |= 0;
    return sum >>> 0;
  };
  for (let warm = 0; warm < 12; warm += 1) step();
  return step;
};

const HEX = '0123456789abcdef';

export const chanceFrom = (seed: string): Chance => {
  const word = generator(stateOf(seed));
  const next = (): number => word() / 4_294_967_296;
  const between = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));

  return {
    next,
    yes: (probability) => next() < probability,
    between,
    pick: (list) => {
      const one = list[between(0, list.length - 1)];
      if (one === undefined) throw new Error('Nothing to pick from');
      return one;
    },
    count: (mean) => countOf(mean, next),
    hex: (digits) => Array.from({ length: digits }, () => HEX[word() >>> 28]).join(''),
    bytes: (length) => Uint8Array.from({ length }, () => word() >>> 24),
    branch: (name) => chanceFrom(`${seed}/${name}`),
  };
};

/** Knuth's way to a Poisson count; means here are small. */
const countOf = (mean: number, next: () => number): number => {
  const limit = Math.exp(-mean);
  let product = next();
  let count = 0;
  while (product > limit) {
    product *= next();
    count += 1;
  }
  return count;
};
