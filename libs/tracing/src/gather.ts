import { homeGroups } from './home-groups';
import { sameHomesKey } from './members';
import { makersByLot } from './row-factors';
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
  const groups = [...rowGroups(sequences, isClaimed, makersByLot(input.lots)), ...homeGroups(units)];
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
  { cause, among, members }: Gathered,
  { stratumOf }: Placed,
  claimedAt: readonly number[],
): readonly CauseGroup[] => {
  const claimed = placesIn(members.belong, claimedAt);
  if (claimed.length === 0) return [];

  const lived = (unit: number): boolean => (stratumOf[unit] ?? -1) >= 0;
  const belong = members.belong.filter(lived);
  const unclear = members.unclear.filter(lived);
  return [
    {
      cause,
      among,
      sameHomes: sameHomesKey(belong, unclear),
      cells: cellsOf(belong, unclear, stratumOf),
      claimed,
      unclear: placesIn(unclear, claimedAt),
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
  unclear: readonly number[],
  stratumOf: readonly number[],
): readonly GroupCell[] => {
  const cells = new Map<number, { stratum: number; units: number; unclear: number }>();
  const cellOf = (unit: number): { units: number; unclear: number } => {
    const stratum = stratumOf[unit] ?? 0;
    const cell = cells.get(stratum) ?? { stratum, units: 0, unclear: 0 };
    cells.set(stratum, cell);
    return cell;
  };
  for (const unit of belong) cellOf(unit).units++;
  for (const unit of unclear) cellOf(unit).unclear++;
  return [...cells.values()];
};

const habitsOf = ({ operation, rows }: Sequence): readonly HabitRow[] => {
  const counts = new Map<RecordMark, number>();
  for (const { marks } of rows) for (const mark of marks) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  return [...counts].map(([mark, count]) => ({ operation, mark, count, of: rows.length }));
};
