import type { Cause } from './cause';
import { Members } from './members';
import { ROW_FACTORS } from './row-factors';
import type { RowFactor, ValuesIn } from './row-factors';
import { rowValues } from './row-values';
import type { RowValues } from './row-values';
import type { Sequence } from './sequences';
import type { WorkRow } from './trace-rows';

/** Units that share a cause, by their places, before they are counted. */
export type Gathered = {
  readonly cause: Cause;
  readonly among: number;
  readonly members: Members;
  readonly outOfTolerance?: boolean;
};

/** The units of every lot, maker, crew, shift, instrument and revision that any claimed unit has, by operation. */
export const rowGroups = (
  sequences: readonly Sequence[],
  isClaimed: readonly boolean[],
  valuesIn: ValuesIn,
): readonly Gathered[] => {
  const lots = lotsOfClaimed(sequences, isClaimed, valuesIn);
  const byOperation = sequences.flatMap((sequence) => [
    ...ROW_FACTORS.flatMap((factor) => {
      const values = rowValues(sequence, factor, valuesIn);
      if (values.distinct === 0) return [];
      const extra = factor === 'lot' ? lots.lot : factor === 'maker' ? lots.maker : [];
      return groupsOf(sequence, factor, { values, wanted: wantedOf(sequence, values, isClaimed, extra) });
    }),
    ...unrecorded(sequence),
  ]);
  return [...byOperation, ...acrossOperations(byOperation)];
};

/** Lots that claimed units have anywhere: their units count at every operation that used them. */
const lotsOfClaimed = (
  sequences: readonly Sequence[],
  isClaimed: readonly boolean[],
  valuesIn: ValuesIn,
): { readonly lot: ReadonlySet<string>; readonly maker: ReadonlySet<string> } => {
  const lot = new Set<string>();
  const maker = new Set<string>();
  for (const { rows, units } of sequences) {
    rows.forEach((row, at) => {
      if (isClaimed[units[at] ?? -1] !== true) return;
      for (const value of row.lots) lot.add(value);
      for (const value of valuesIn(row, 'maker')) maker.add(value);
    });
  }
  return { lot, maker };
};

const wantedOf = (
  { units }: Sequence,
  { known }: RowValues,
  isClaimed: readonly boolean[],
  extra: Iterable<string>,
): ReadonlySet<string> => {
  const wanted = new Set<string>(extra);
  known.forEach((values, at) => {
    if (isClaimed[units[at] ?? -1] === true) for (const value of values) wanted.add(value);
  });
  return wanted;
};

const groupsOf = (
  sequence: Sequence,
  factor: RowFactor,
  { values, wanted }: { values: RowValues; wanted: ReadonlySet<string> },
): readonly Gathered[] => {
  const groups = new Map([...wanted].sort().map((value) => [value, new Members()]));
  sequence.units.forEach((unit, at) => {
    for (const value of values.known[at] ?? []) groups.get(value)?.add(unit);
    for (const value of values.possible[at] ?? []) groups.get(value)?.addUnclear(unit);
  });
  const { operation, station } = sequence;
  const rowsOf = countRows(sequence.units);
  const out = factor === 'instrument' ? foundOut(sequence.rows) : new Set<string>();
  return [...groups].flatMap(([value, members]) =>
    members.belong.length === 0
      ? []
      : [
          {
            cause: { operation, station, outside: null, factor, value },
            among: values.distinct,
            members: members.settled(rowsOf),
            ...(factor === 'instrument' ? { outOfTolerance: out.has(value) } : {}),
          },
        ],
  );
};

const countRows = (units: readonly number[]): ReadonlyMap<number, number> => {
  const counts = new Map<number, number>();
  for (const unit of units) counts.set(unit, (counts.get(unit) ?? 0) + 1);
  return counts;
};

/** Instruments that were out of tolerance on any of this work. */
const foundOut = (rows: readonly WorkRow[]): ReadonlySet<string> =>
  new Set(rows.flatMap(({ marks, instruments }) => (marks.includes('instrument-out') ? instruments : [])));

/** Units without a record of the operation: perhaps it was never done. */
const unrecorded = ({ operation, station, rows, units }: Sequence): readonly Gathered[] => {
  const members = new Members();
  rows.forEach((row, at) => {
    if (row.marks.includes('missing')) members.add(units[at] ?? -1);
  });
  if (members.belong.length === 0) return [];
  return [
    {
      cause: { operation, station, outside: null, factor: 'unrecorded', value: null },
      among: 1,
      members: members.settled(countRows(units)),
    },
  ];
};

/** A lot or maker wherever it was used: what a bought part is suspected by. */
const acrossOperations = (groups: readonly Gathered[]): readonly Gathered[] => {
  const byPart = new Map<string, Gathered[]>();
  for (const group of groups) {
    const { factor, value } = group.cause;
    if (factor !== 'lot' && factor !== 'maker') continue;
    const key = `${factor} ${value ?? ''}`;
    byPart.set(key, [...(byPart.get(key) ?? []), group]);
  }
  return [...byPart.values()].flatMap((parts) => {
    const [head] = parts;
    if (head === undefined) return [];
    const cause = { ...head.cause, operation: null, station: null };
    return [{ cause, among: Math.max(...parts.map(({ among }) => among)), members: united(parts) }];
  });
};

const united = (parts: readonly Gathered[]): Members => {
  const [only] = parts;
  if (parts.length === 1 && only !== undefined) return only.members;
  const belong = new Set(parts.flatMap(({ members }) => members.belong));
  const partly = new Set(parts.flatMap(({ members }) => members.partly));
  const members = new Members();
  for (const unit of [...belong].sort((a, b) => a - b)) members.add(unit);
  for (const unit of [...partly].sort((a, b) => a - b)) if (!belong.has(unit)) members.partly.push(unit);
  return members;
};
