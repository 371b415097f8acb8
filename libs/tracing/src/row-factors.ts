import type { Factor } from './cause';
import type { LotRow, WorkRow } from './trace-rows';

/** Factors that are read from an operation's own row. */
export const ROW_FACTORS = [
  'lot',
  'maker',
  'crew',
  'shift',
  'instrument',
  'revision',
] as const satisfies readonly Factor[];
export type RowFactor = (typeof ROW_FACTORS)[number];

/**
 * A lot lasts until the next is opened, so the rows next to a missing one say which it was. Crews, shifts and
 * instruments come and go, so a missing row may be that of any seen nearby.
 */
export const NEIGHBOURS: { readonly [factor in RowFactor]: number } = {
  lot: 1,
  maker: 1,
  revision: 1,
  crew: 3,
  shift: 3,
  instrument: 3,
};

export type MakerOf = (lot: string) => string | null;

export const makersByLot = (lots: readonly LotRow[]): MakerOf => {
  const makers = new Map(lots.map(({ lot, maker }) => [lot, maker]));
  return (lot) => makers.get(lot) ?? null;
};

const NONE: readonly string[] = [];
const one = (value: string | null): readonly string[] => (value === null ? NONE : [value]);

/** What a row says of a factor: none, one or several values. */
export const valuesIn = (row: WorkRow, factor: RowFactor, makerOf: MakerOf): readonly string[] => {
  switch (factor) {
    case 'lot':
      return row.lots;
    case 'instrument':
      return row.instruments;
    case 'maker':
      return row.lots.length === 0 ? NONE : [...new Set(row.lots.flatMap((lot) => one(makerOf(lot))))];
    default:
      return one(row[factor]);
  }
};
