import type { Covered } from './covers';
import { coversOver } from './covers';
import type { Entry, WorkState } from './entry';
import type { Finding } from './finding';
import type { CompiledPlan, PlannedOperation } from './plan';
import { isRecorded } from './proven';
import { atMostHold } from './values';

/**
 * Work told, or seen, after its cover was told: nobody could see it any more. Values put right on work that
 * was proven in time are no such thing, and what was opened up again is `reconstructed`.
 */
export const judgeUnderCover = (
  plan: CompiledPlan,
  state: WorkState,
  operation: PlannedOperation,
  entry: Entry,
): readonly Finding[] => {
  if (entry.proof === 'reconstructed') return [];
  return coversOver(plan, state, operation.id)
    .filter((cover) => tellsUnder(plan, state, entry, cover))
    .map(({ cover, grade, source }) => ({
      rule: entry.proof === 'seen' ? 'seen-after-cover' : 'recorded-under-cover',
      grade: atMostHold(grade),
      class: 'record',
      operation: operation.id,
      station: operation.station,
      recorded: cover,
      source,
    }));
};

/** Only what is newly told counts: all of it the first time, later the places that were still open. */
const tellsUnder = (plan: CompiledPlan, state: WorkState, entry: Entry, { except }: Covered): boolean => {
  const before = state.work[entry.operation];
  if (before === undefined || !isRecorded(plan, state, entry.operation)) return true;

  return before.except.some((place) => !entry.except.includes(place) && !except.includes(place));
};
