import type { DoneWork, WorkState } from './entry';
import type { CompiledPlan } from './plan';

/** Why an operation does not count as proven. */
export type Gap =
  | { readonly lacks: 'record' }
  | { readonly lacks: 'value'; readonly characteristic: string; readonly required: string }
  | { readonly lacks: 'places'; readonly places: readonly string[] };

/**
 * What an operation still lacks, looked at outside the places of no interest. Work that is there with a value
 * missing that a hold or a refusal hangs on is not proven; a note is no reason to stop anyone.
 * An operation that is not in the plan does not apply to the design, and lacks nothing.
 */
export const gapsOf = (
  plan: CompiledPlan,
  state: WorkState,
  operation: string,
  outside: readonly string[] = [],
): readonly Gap[] => {
  if (plan.operations[operation] === undefined) return [];
  const done = state.work[operation];
  if (done === undefined) return [{ lacks: 'record' }];

  const places = done.except.filter((place) => !outside.includes(place));
  return [
    ...missingValues(plan, operation, done),
    ...(places.length > 0 ? [{ lacks: 'places', places } as const] : []),
  ];
};

const missingValues = (plan: CompiledPlan, operation: string, done: DoneWork): readonly Gap[] =>
  done.missing.length === 0
    ? []
    : (plan.operations[operation]?.values ?? [])
        .filter((value) => value.grade !== 'note' && done.missing.includes(value.characteristic))
        .map(({ characteristic, required }) => ({ lacks: 'value', characteristic, required }));

/** Recorded, with every value that a hold or a refusal hangs on, at every place. */
export const isProven = (plan: CompiledPlan, state: WorkState, operation: string): boolean =>
  gapsOf(plan, state, operation).length === 0;

/** Recorded with all its values, though maybe not yet at every place. */
export const isRecorded = (plan: CompiledPlan, state: WorkState, operation: string): boolean =>
  gapsOf(plan, state, operation).every((gap) => gap.lacks === 'places');
