import { homeGroups } from './home-groups';
import { sameHomesKey } from './members';
import { valuesReader } from './row-factors';
import { rowGroups } from './row-groups';
import type { Gathered } from './row-groups';
import { sequencesOf } from './sequences';
import type { Sequence } from './sequences';
import { placeUnits } from './strata';
import type { Placed } from './strata';
import type { CauseGroup, ClaimedUnit, GroupCell, TraceCounts } from './trace-counts';
import type { HabitRow, RecordMark, TraceInput, WorkRow } from './trace-rows';
import { unitsOf } from './units';
import type { Unit } from './units';

/** Counts rows for the ranking: units in strata, groups that share something, habits of the stations. */
export const gatherCounts = (input: TraceInput, halfOfClaimsDays: number): TraceCounts => {
  const units = unitsOf(input, halfOfClaimsDays);
  const placed = placeUnits(units);
  const claimedAt = placesOfClaimed(units);
  const isClaimed = claimedAt.map((at) => at >= 0);
  const sequences = sequencesOf(units);
  const groups = [...rowGroups(sequences, isClaimed, valuesReader(input.lots)), ...homeGroups(units)];
  return {
    strata: placed.strata,
    claimed: units.flatMap((unit, at) => (isClaimed[at] === true ? [claimedUnit(unit, at, placed)] : [])),
    groups: groups.flatMap((group) => countGroup(group, placed, claimedAt)),
    slices: placed.slices,
    habits: sequences.flatMap(habitsOf),
  };
};

const placesOfClaimed = (units: readonly Unit[]): readonly number[] => {
  let next = 0;
  return units.map(({ claims }) => (claims.length > 0 ? next++ : -1));
};

const claimedUnit = (unit: Unit, at: number, { stratumOf, sliceOf }: Placed): ClaimedUnit => ({
  home: unit.home.home,
  claims: unit.claims.map(({ claim }) => claim),
  stratum: stratumOf[at] ?? 0,
  slice: sliceOf[at] ?? -1,
  marks: unit.home.work
    .filter((row) => unit.id === unit.home.home || row.unit === unit.id || row.unit === unit.home.home)
    .flatMap(({ operation, marks }: WorkRow) => marks.map((mark) => ({ operation, mark }))),
  asFound: unit.claims.flatMap(({ asFound }) => (asFound === null ? [] : [asFound])),
});

/** Nothing where no claimed unit belongs: such a group cannot be the cause. */
const countGroup = (
  { members, ...group }: Gathered,
  { stratumOf }: Placed,
  claimedAt: readonly number[],
): readonly CauseGroup[] => {
  const claimed = placesIn(members.belong, claimedAt);
  const partlyClaimed = placesIn(members.partly, claimedAt);
  if (claimed.length + partlyClaimed.length === 0) return [];

  const lived = (unit: number): boolean => (stratumOf[unit] ?? -1) >= 0;
  const belong = members.belong.filter(lived);
  const partly = members.partly.filter(lived);
  return [
    {
      ...group,
      sameHomes: sameHomesKey(belong, partly),
      cells: cellsOf(belong, partly, stratumOf),
      claimed,
      partly: partlyClaimed,
    },
  ];
};

const placesIn = (units: readonly number[], claimedAt: readonly number[]): readonly number[] =>
  units.flatMap((unit) => {
    const at = claimedAt[unit] ?? -1;
    return at >= 0 ? [at] : [];
  });

const cellsOf = (
  belong: readonly number[],
  partly: readonly number[],
  stratumOf: readonly number[],
): readonly GroupCell[] => {
  const cells = new Map<number, { stratum: number; units: number; partly: number }>();
  const cellOf = (unit: number): { units: number; partly: number } => {
    const stratum = stratumOf[unit] ?? 0;
    const cell = cells.get(stratum) ?? { stratum, units: 0, partly: 0 };
    cells.set(stratum, cell);
    return cell;
  };
  for (const unit of belong) cellOf(unit).units++;
  for (const unit of partly) cellOf(unit).partly++;
  return [...cells.values()];
};

/** By unit, as claims are: a home of two sections has two rows to leave a mark on. */
const habitsOf = ({ operation, rows, units }: Sequence): readonly HabitRow[] => {
  const marked = new Map<RecordMark, Set<number>>();
  rows.forEach(({ marks }, at) => {
    for (const mark of marks) marked.set(mark, (marked.get(mark) ?? new Set()).add(units[at] ?? -1));
  });
  const of = new Set(units).size;
  return [...marked].map(([mark, on]) => ({ operation, mark, count: on.size, of }));
};
