import type { Asking, Entry, WorkState } from './entry';
import type { Finding } from './finding';
import type { CompiledPlan } from './plan';

/** All there is to say of work told as done. Empty: all as planned. Never throws on bad values; says so. */
export declare const judgeWork: (plan: CompiledPlan, state: WorkState, entry: Entry) => readonly Finding[];

/** All there is to say of an asking. Cleared when no finding is of grade `refuse`. */
export declare const judgeAsking: (plan: CompiledPlan, state: WorkState, asking: Asking) => readonly Finding[];

/** How an operation stands: drawn by the marks. */
export type OperationStanding = {
  readonly operation: string;
  readonly standing: 'proven' | 'covered' | 'open-at-places' | 'due' | 'waiting' | 'held';
  readonly except: readonly string[];
  /** Hard-required operations not yet proven: what blocks it. */
  readonly waitsFor: readonly string[];
};

/**
 * How every operation of the plan stands. `due`: nothing hard stands in its way and the section has reached its
 * station (or the station is a shop, feeding a station reached); `waiting`: not yet.
 */
export declare const standings: (
  plan: CompiledPlan,
  state: WorkState,
  at: string | null,
) => readonly OperationStanding[];
