/**
 * Single sampling by attributes (ISO 2859-1; the tables of MIL-STD-105E, which is in the public domain, are the same for
 * normal and tightened inspection). `size` units are looked at; the lot is accepted with at most `accept` defective ones,
 * not accepted from `reject` on.
 */
export type SamplingPlan = { readonly size: number; readonly accept: number; readonly reject: number };

export const SEVERITIES = ['normal', 'tightened', 'reduced'] as const;
export type Severity = (typeof SEVERITIES)[number];

/** In the order of their sample sizes; I and O are left out, as the tables do. */
export const CODE_LETTERS = 'ABCDEFGHJKLMNPQR';

/** Acceptance quality limits, percent defective. */
export const QUALITY_LIMITS = [
  '0.010',
  '0.015',
  '0.025',
  '0.040',
  '0.065',
  '0.10',
  '0.15',
  '0.25',
  '0.40',
  '0.65',
  '1.0',
  '1.5',
  '2.5',
  '4.0',
  '6.5',
  '10',
] as const;
export type QualityLimit = (typeof QUALITY_LIMITS)[number];

export const INSPECTION_LEVELS = ['S-1', 'S-2', 'S-3', 'S-4', 'I', 'II', 'III'] as const;
export type InspectionLevel = (typeof INSPECTION_LEVELS)[number];

/** Table I: up to which lot size, and the letter of each level in the order of INSPECTION_LEVELS. */
const LETTERS: readonly (readonly [number, string])[] = [
  [8, 'AAAAAAB'],
  [15, 'AAAAABC'],
  [25, 'AABBBCD'],
  [50, 'ABBCCDE'],
  [90, 'BBCCCEF'],
  [150, 'BBCDDFG'],
  [280, 'BCDEEGH'],
  [500, 'BCDEFHJ'],
  [1200, 'CCEFGJK'],
  [3200, 'CDEGHKL'],
  [10_000, 'CDFGJLM'],
  [35_000, 'CDFHKMN'],
  [150_000, 'DEGJLNP'],
  [500_000, 'DEGJMPQ'],
  [Infinity, 'DEHKNQR'],
];

/** Null for a lot of fewer than two units, which no plan covers. */
export const codeLetter = (lot: number, level: InspectionLevel): string | null => {
  if (lot < 2) return null;
  const row = LETTERS.find(([to]) => lot <= to);
  return row?.[1][INSPECTION_LEVELS.indexOf(level)] ?? null;
};

type Table = {
  readonly sizes: readonly number[];
  /** The diagonal (letter + limit, both counted from 0) on which nothing defective is accepted. */
  readonly zero: number;
  /** The last diagonal whose arrow leads up to zero. */
  readonly lastUp: number;
  /** Accept and reject numbers of the diagonals from zero + 3 on; both between are arrows. */
  readonly numbers: readonly (readonly [number, number])[];
};

/** Tightened inspection has one size more, under letter S, for arrows only. */
const SIZES = [2, 3, 5, 8, 13, 20, 32, 50, 80, 125, 200, 315, 500, 800, 1250, 2000];

const plain = (accepts: readonly number[]): Table['numbers'] =>
  accepts.map((accept) => [accept, accept + 1] as const);

/** Reduced inspection as in MIL-STD-105E: between accept and reject the lot is accepted and normal inspection resumes. */
const REDUCED: Table['numbers'] = [
  [0, 2],
  [1, 3],
  [1, 4],
  [2, 5],
  [3, 6],
  [5, 8],
  [7, 10],
  [10, 13],
];

const TABLES: Readonly<Record<Severity, Table>> = {
  normal: { sizes: SIZES, zero: 14, lastUp: 15, numbers: plain([1, 2, 3, 5, 7, 10, 14, 21]) },
  tightened: { sizes: [...SIZES, 3150], zero: 15, lastUp: 15, numbers: plain([1, 2, 3, 5, 8, 12, 18]) },
  reduced: {
    sizes: [2, 2, 2, 3, 5, 8, 13, 20, 32, 50, 80, 125, 200, 315, 500, 800],
    zero: 14,
    lastUp: 15,
    numbers: REDUCED,
  },
};

/**
 * The tables are diagonals: along one, sample size and limit change together and the numbers stay. Between zero and one
 * accepted stand two arrows, up to zero or down to one; what lies outside is an arrow to the first or
 * last diagonal. An arrow's plan is taken with its own sample size.
 */
export const singlePlan = (severity: Severity, letter: string, limit: QualityLimit): SamplingPlan | null => {
  const row = CODE_LETTERS.indexOf(letter);
  if (row < 0 || letter.length !== 1) return null;

  const table = TABLES[severity];
  const column = QUALITY_LIMITS.indexOf(limit);
  if (severity === 'tightened' && letter === 'A' && limit === '10') return A_TIGHTENED;
  const [first, other] = diagonals(table, row + column);
  return cell(table, first, column) ?? cell(table, other, column);
};

/** The one cell off its diagonal: an arrow to one accepted (as the R package AQLSchemes has it; the page was not seen). */
const A_TIGHTENED: SamplingPlan = { size: 8, accept: 1, reject: 2 };

/** Where the arrow leads, and where it leads at the table's edge when there is nothing that way. */
const diagonals = ({ zero, lastUp, numbers }: Table, diagonal: number): readonly [number, number] => {
  const one = zero + 3;
  if (diagonal <= lastUp) return [zero, one];
  return [Math.min(Math.max(diagonal, one), one + numbers.length - 1), zero];
};

const cell = ({ sizes, zero, numbers }: Table, diagonal: number, column: number): SamplingPlan | null => {
  const size = sizes[diagonal - column];
  const [accept, reject] = diagonal === zero ? [0, 1] : (numbers[diagonal - zero - 3] ?? [0, 1]);
  return size === undefined ? null : { size, accept, reject };
};

/** A sample as large as the lot means every unit is looked at. */
export const forLot = (plan: SamplingPlan, lot: number): SamplingPlan =>
  plan.size >= lot ? { ...plan, size: lot } : plan;
