import { lotKindsOf } from '@libs/judge';
import type { PlannedOperation, WorkedLot } from '@libs/judge';
import type { UnitFacts } from './unit.facts';

/**
 * Lots an operation inherits: scanned ones first, then what is mounted where it was done, then what is mounted
 * at its own station, one of each kind it uses up. Crews that catch up elsewhere carry their material along.
 */
export const lotsFor = (planned: PlannedOperation | undefined, facts: UnitFacts): readonly WorkedLot[] => {
  const lots = [...facts.scanned];
  if (planned === undefined) return lots;

  const kinds = lotKindsOf(planned);
  for (const { lot } of nearestFirst(planned.station, facts)) {
    if (kinds.has(lot.kind) && !lots.some(({ kind }) => kind === lot.kind)) lots.push(lot);
  }
  return lots;
};

const nearestFirst = (station: string, facts: UnitFacts): UnitFacts['mounted'] => [
  ...facts.mounted.filter((mounted) => mounted.station === facts.station),
  ...facts.mounted.filter((mounted) => mounted.station === station),
];
