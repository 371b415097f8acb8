import type { Design, Deviation } from '@libs/judge';
import type { RevisionChanges } from './unit.revision.events';

type Event<T extends string, D> = {
  readonly type: T;
  readonly data: D;
  readonly revision?: number;
  readonly planDigest?: string;
  readonly corrects?: number;
};

export type UnitChangeEvent = OrderChanged | DeviationApproved;

/** The order changed, in mid-line or before: what is now due, what no longer is, and what is newly wrong. */
export type OrderChanged = Event<
  'OrderChanged',
  RevisionChanges & {
    readonly serial: string;
    readonly design: Design;
    readonly note?: string;
  }
>;
/** Approved for this home alone, in place of what its plan asks. */
export type DeviationApproved = Event<
  'DeviationApproved',
  { readonly serial: string; readonly deviation: Deviation; readonly note?: string }
>;
