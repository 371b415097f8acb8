import type { Finding } from '@libs/judge';

/** What another revision changes for one unit, as it stands. */
export type RevisionChanges = {
  /** Operations it asks for that were not asked for before, and are not on record. */
  readonly due: readonly string[];
  /** Operations it no longer asks for. */
  readonly notDue: readonly string[];
  /** What is required differently. Null: nothing was, or is no longer. */
  readonly changed: readonly ChangedRequirement[];
  /** What it does not accept of the work on record, where the revision before did. */
  readonly findings: readonly Finding[];
};
export type ChangedRequirement = {
  readonly operation: string;
  readonly characteristic: string;
  readonly before: string | null;
  readonly after: string | null;
  readonly unit: string | null;
};

/** From here on the unit is judged by another revision: decided by a person, who was shown what it changes. */
export type RevisionApplied = {
  readonly type: 'RevisionApplied';
  readonly data: RevisionChanges & {
    readonly serial: string;
    readonly from: number;
    readonly to: number;
    readonly note?: string;
  };
  readonly revision?: number;
  readonly planDigest?: string;
  readonly corrects?: number;
};
