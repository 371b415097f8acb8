import type { WorkRow } from './trace-rows';
import type { Unit } from './units';

/** One operation's rows in the order the line built them, with the unit each belongs to. */
export type Sequence = {
  readonly operation: string;
  readonly station: string;
  readonly rows: readonly WorkRow[];
  readonly units: readonly number[];
};

type Growing = { operation: string; station: string; rows: WorkRow[]; units: number[] };

/** Every operation's rows, unit by unit: a unit's rows of one operation stand together. */
export const sequencesOf = (units: readonly Unit[]): readonly Sequence[] => {
  const sequences = new Map<string, Growing>();
  const whole = (unit: Unit): boolean => unit.id === unit.home.home;
  units.forEach((unit, at) => {
    for (const row of unit.home.work) {
      if (row.unit !== unit.id && row.unit !== unit.home.home && !whole(unit)) continue;
      let sequence = sequences.get(row.operation);
      if (sequence === undefined) {
        sequence = { operation: row.operation, station: row.station, rows: [], units: [] };
        sequences.set(row.operation, sequence);
      }
      sequence.rows.push(row);
      sequence.units.push(at);
    }
  });
  return [...sequences.values()].sort((one, other) => (one.operation < other.operation ? -1 : 1));
};
