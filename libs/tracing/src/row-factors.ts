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

/** What a row says of a factor: none, one or several values. */
export type ValuesIn = (row: WorkRow, factor: RowFactor) => readonly string[];

const NONE: readonly string[] = [];

/** Reads rows; the same value is the same list each time, because there are many rows and few values. */
export const valuesReader = (lots: readonly LotRow[]): ValuesIn => {
  const makers = new Map(lots.map(({ lot, maker }) => [lot, maker]));
  const lists = new Map<string, readonly string[]>();
  const one = (value: string | null): readonly string[] => {
    if (value === null) return NONE;
    const known = lists.get(value);
    if (known !== undefined) return known;
    const list = [value];
    lists.set(value, list);
    return list;
  };
  const makersOf = (row: WorkRow): readonly string[] => {
    const [only] = row.lots;
    if (only === undefined) return NONE;
    if (row.lots.length === 1) return one(makers.get(only) ?? null);
    return [...new Set(row.lots.flatMap((lot) => one(makers.get(lot) ?? null)))];
  };
  return (row, factor) => {
    switch (factor) {
      case 'lot':
        return row.lots;
      case 'instrument':
        return row.instruments;
      case 'maker':
        return makersOf(row);
      default:
        return one(row[factor]);
    }
  };
};
