import { coveredBy } from './covers';
import type { WorkState } from './entry';
import type { CompiledPlan, PlannedOperation } from './plan';
import { indexOf } from './plan-index';
import { isProven, isRecorded } from './proven';

/** How an operation stands: drawn by the marks. */
export type OperationStanding = {
  readonly operation: string;
  readonly standing: 'proven' | 'covered' | 'open-at-places' | 'due' | 'waiting' | 'held';
  readonly except: readonly string[];
  /** Hard-required operations not yet proven: what blocks it. What it would take from sight is among them. */
  readonly waitsFor: readonly string[];
};

/**
 * How every operation of the plan stands. `due`: nothing hard stands in its way and the section has reached its
 * station (or the station is a shop, feeding a station reached); `waiting`: not yet.
 */
export const standings = (
  plan: CompiledPlan,
  state: WorkState,
  at: string | null,
): readonly OperationStanding[] => {
  const held = new Set(state.holds.flatMap(({ operation }) => operation ?? []));
  return plan.order.flatMap((id) => {
    const operation = plan.operations[id];
    return operation === undefined ? [] : [standing(plan, state, { operation, at, held })];
  });
};

type About = {
  readonly operation: PlannedOperation;
  readonly at: string | null;
  readonly held: ReadonlySet<string>;
};

const standing = (
  plan: CompiledPlan,
  state: WorkState,
  { operation, at, held }: About,
): OperationStanding => {
  const done = isRecorded(plan, state, operation.id);
  const waitsFor = done ? [] : needsOf(operation).filter((need) => !isProven(plan, state, need));
  const due = waitsFor.length === 0 && hasReached(plan, at, operation.station);
  const open = due ? 'due' : 'waiting';
  return {
    operation: operation.id,
    standing: held.has(operation.id) ? 'held' : done ? doneStanding(plan, state, operation.id) : open,
    except: state.work[operation.id]?.except ?? [],
    waitsFor,
  };
};

const needsOf = ({ requires, hides }: PlannedOperation): readonly string[] => [
  ...new Set([
    ...requires.map((edge) => edge.operation),
    ...hides.filter(({ hidden }) => hidden !== 'lift').map((hide) => hide.operation),
  ]),
];

const doneStanding = (
  plan: CompiledPlan,
  state: WorkState,
  operation: string,
): OperationStanding['standing'] => {
  if ((state.work[operation]?.except.length ?? 0) > 0) return 'open-at-places';
  return coveredBy(plan, state, operation).length > 0 ? 'covered' : 'proven';
};

const hasReached = (plan: CompiledPlan, at: string | null, station: string): boolean =>
  at !== null && (at === station || placeOf(plan, station) <= placeOf(plan, at));

const placeOf = (plan: CompiledPlan, station: string): number => indexOf(plan).stationOrder.get(station) ?? 0;

/** What a station still owes: its operations that are not proven everywhere, in working order. */
export const openAt = (plan: CompiledPlan, state: WorkState, station: string): readonly string[] =>
  plan.order.filter((id) => plan.operations[id]?.station === station && !isProven(plan, state, id));

/** What stations before this one, and the shops that feed it or them, still owe. */
export const carriedOpen = (plan: CompiledPlan, state: WorkState, at: string): readonly string[] => {
  const here = placeOf(plan, at);
  return plan.order.filter((id) => {
    const station = plan.operations[id]?.station;
    return station !== undefined && placeOf(plan, station) < here && !isProven(plan, state, id);
  });
};
