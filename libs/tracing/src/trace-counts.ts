import type { Cause } from './cause';
import type { AsFound, HabitRow, RecordMark } from './trace-rows';

/** Like is compared with like: units built in one band of time, of one model (and role, where sections are compared). */
export type Stratum = {
  readonly band: number;
  readonly model: number;
  /** Units in owners' hands. */
  readonly units: number;
  readonly claimed: number;
  /** How much of their chances to be complained of they have had, 0 to 1, on average. */
  readonly seasoned: number;
};

/** A unit (a home, or a section where every claim names one) with a like claim. */
export type ClaimedUnit = {
  readonly home: string;
  readonly claims: readonly string[];
  readonly stratum: number;
  /** Which slice of time it was built in, for windows. */
  readonly slice: number;
  readonly marks: readonly { readonly operation: string; readonly mark: RecordMark }[];
  readonly asFound: readonly AsFound[];
};

export type GroupCell = {
  readonly stratum: number;
  readonly units: number;
  /** Units that belong in part (one section of the home), or of which the record does not say. */
  readonly partly: number;
};

/** Homes that share something, counted. Many causes may have the same homes. */
export type CauseGroup = {
  readonly cause: Cause;
  /** Equal for two groups if and only if they hold the very same units. */
  readonly sameHomes: string;
  /** How many values this factor has here: each was as likely to be the one, before looking. */
  readonly among: number;
  readonly cells: readonly GroupCell[];
  /** Places in `claimed` of those that belong, and of those that do in part or perhaps. */
  readonly claimed: readonly number[];
  readonly partly: readonly number[];
  /** For an instrument: whether it was found out of tolerance on any of the work. */
  readonly outOfTolerance?: boolean;
};

/** The line's time cut in equal slices, for causes that come and go. */
export type Slice = {
  /** Days since 1970, both within. */
  readonly fromDay: number;
  readonly toDay: number;
  readonly cells: readonly { readonly stratum: number; readonly units: number }[];
};

/** All that ranking needs, already counted: what a view can keep for tens of thousands of homes. */
export type TraceCounts = {
  readonly strata: readonly Stratum[];
  readonly claimed: readonly ClaimedUnit[];
  /** Groups with at least one claimed unit; those without cannot be the cause. */
  readonly groups: readonly CauseGroup[];
  readonly slices: readonly Slice[];
  readonly habits: readonly HabitRow[];
};
