import { NEIGHBOURS } from './row-factors';
import type { RowFactor, ValuesIn } from './row-factors';
import type { Sequence } from './sequences';

/** What each row of an operation says of a factor, and what may be said where nothing was recorded. */
export type RowValues = {
  /** Recorded, or beyond doubt because the rows before and after agree. */
  readonly known: readonly (readonly string[])[];
  /** Cannot be excluded: seen in the rows nearby. */
  readonly possible: readonly (readonly string[])[];
  readonly distinct: number;
};

const NONE: readonly string[] = [];

export const rowValues = (sequence: Sequence, factor: RowFactor, valuesIn: ValuesIn): RowValues => {
  const recorded = sequence.rows.map((row) => valuesIn(row, factor));
  const seen = new Set<string>();
  const gaps: number[] = [];
  recorded.forEach((values, at) => {
    for (const value of values) seen.add(value);
    if (values.length === 0 && sequence.rows[at]?.marks.includes('missing') === true) gaps.push(at);
  });
  const distinct = seen.size;
  if (gaps.length === 0 || distinct === 0) return { known: recorded, possible: [], distinct };

  const known = [...recorded];
  const possible: (readonly string[])[] = [];
  for (const at of gaps) {
    const nearby = [
      ...new Set([...near(recorded, at, -NEIGHBOURS[factor]), ...near(recorded, at, NEIGHBOURS[factor])]),
    ];
    if (nearby.length === 1) known[at] = nearby;
    else possible[at] = nearby;
  }
  return { known, possible, distinct };
};

/** The values of the nearest rows that have any, up to `reach` of them, before (reach < 0) or after. */
const near = (recorded: readonly (readonly string[])[], from: number, reach: number): readonly string[] => {
  const found: string[] = [];
  const step = Math.sign(reach);
  let left = Math.abs(reach);
  for (let at = from + step; left > 0 && at >= 0 && at < recorded.length; at += step) {
    const values = recorded[at] ?? NONE;
    if (values.length === 0) continue;
    found.push(...values);
    left--;
  }
  return found;
};
