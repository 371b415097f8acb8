import type { Factor } from './cause';
import type { RecordMark } from './trace-rows';

/** A value that may be true, and how likely it was held before looking. Shares of a list add up to 1. */
export type Guess = { readonly value: number; readonly share: number };

/**
 * What is held before looking at a plant's own data. Every number is stated here and explained in README.md;
 * data outweighs them where there is enough of it.
 */
export type Beliefs = {
  /** The share of questions whose claims have no cause in common. */
  readonly noCommonCause: number;
  /** What the letters of the fault map weigh. */
  readonly weights: { readonly a: number; readonly b: number; readonly c: number };
  /** The share that is left for operations, and for outside causes, the fault map does not name. */
  readonly unnamedOperations: number;
  readonly unnamedOutside: number;
  /** How a cause at an operation shows: weights, spread over the factors there are. */
  readonly factors: { readonly [factor in Factor]: number };
  /** Which factors an outside cause has. Its weights are those of `factors`. */
  readonly outside: { readonly [cause: string]: readonly Factor[] };
  /** How many times likelier a unit that shares the cause is to be claimed. */
  readonly effects: readonly Guess[];
  /** Where all homes share the cause: the share of the claims that is due to it. */
  readonly shareDue: readonly Guess[];
  /** How often an as-found report points to the true source of its claim. */
  readonly reliability: readonly Guess[];
  /** So many reports would teach as much of what is usually named as the fault map does. */
  readonly reportsTheMapIsWorth: number;
  /** How much likelier a mark is on the record of work that caused a claim. */
  readonly lifts: { readonly [mark in RecordMark]: readonly Guess[] };
  /** How often an instrument that spoiled work is found out of tolerance, and how often one that did not. */
  readonly instrumentOut: { readonly spoiling: number; readonly sound: number };
  /** A pattern's odds for what it points to; its inverse for what it speaks against. */
  readonly patternOdds: number;
  readonly spread: { readonly bands: number; readonly models: number };
  /** The days after which half of a home's claims have come. */
  readonly halfOfClaimsDays: number;
};

const even = (...values: readonly number[]): readonly Guess[] =>
  values.map((value) => ({ value, share: 1 / values.length }));

const NO_WEIGHT = even(1);
const SLIGHT: readonly Guess[] = [
  { value: 1, share: 0.6 },
  { value: 1.5, share: 0.25 },
  { value: 2.5, share: 0.15 },
];
const TELLING: readonly Guess[] = [
  { value: 1, share: 0.5 },
  { value: 2, share: 0.25 },
  { value: 5, share: 0.25 },
];

export const BELIEFS: Beliefs = {
  noCommonCause: 0.4,
  weights: { a: 6, b: 2, c: 1 },
  unnamedOperations: 0.1,
  unnamedOutside: 0.05,
  factors: {
    lot: 1,
    maker: 1,
    crew: 1,
    shift: 1,
    instrument: 1,
    design: 1,
    revision: 1,
    window: 1,
    unrecorded: 1,
    hauler: 1,
    installer: 1,
    retailer: 1,
    every: 0.5,
  },
  outside: {
    'x-road': ['hauler', 'every'],
    'x-set': ['installer', 'every'],
    'x-site': ['installer', 'retailer', 'every'],
    'x-maker': ['maker', 'lot', 'every'],
    'x-alter': ['retailer', 'every'],
    'x-use': ['every'],
    office: ['design', 'revision', 'every'],
  },
  effects: [
    { value: 1.5, share: 0.06 },
    { value: 2.5, share: 0.14 },
    { value: 4, share: 0.18 },
    { value: 7, share: 0.2 },
    { value: 12, share: 0.16 },
    { value: 22, share: 0.12 },
    { value: 45, share: 0.08 },
    { value: 100, share: 0.06 },
  ],
  shareDue: even(0.4, 0.6, 0.8, 0.95),
  reliability: even(0.5, 0.7, 0.85, 0.95),
  reportsTheMapIsWorth: 20,
  lifts: {
    missing: TELLING,
    late: SLIGHT,
    corrected: NO_WEIGHT,
    refused: SLIGHT,
    'near-limit': TELLING,
    'out-of-limit': TELLING,
    reworked: SLIGHT,
    defect: TELLING,
    'covered-soon': SLIGHT,
    'instrument-out': NO_WEIGHT,
  },
  instrumentOut: { spoiling: 0.6, sound: 0.08 },
  patternOdds: 2,
  spread: { bands: 0.45, models: 0.45 },
  halfOfClaimsDays: 90,
};
