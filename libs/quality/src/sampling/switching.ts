import type { Severity } from './plans';

/**
 * Switching rules of ISO 2859-1:1999, 9.3 and 9.4, as restated (the text itself was not seen). Without them the tables
 * do not protect anybody: a supplier who gets worse has to meet tightened inspection.
 */
export type Inspection = {
  readonly severity: Severity | 'stopped';
  /** Newest last; only lots judged at the present severity, at most the last five. */
  readonly recent: readonly boolean[];
  /** Lots not accepted since tightened inspection began. */
  readonly refusedTightened: number;
  /** The switching score, toward reduced inspection. */
  readonly score: number;
};

export const startInspection: Inspection = { severity: 'normal', recent: [], refusedTightened: 0, score: 0 };

export type LotResult = {
  readonly accepted: boolean;
  /** A lot sent again after it was not accepted counts for nothing. */
  readonly resubmitted?: boolean;
  /** Would it have been accepted one quality limit tighter (accept 2 or more), or with nothing found (accept 0 or 1)? */
  readonly comfortably?: boolean;
  /** Reduced inspection found a number between accept and reject (MIL-STD-105E). */
  readonly between?: boolean;
};

/** Production steady and the authority content: both are asked for before inspection may be reduced. */
export type Permission = { readonly mayReduce: boolean };

const REDUCE_AT = 30;

export const afterLot = (
  inspection: Inspection,
  lot: LotResult,
  { mayReduce }: Permission = { mayReduce: false },
): Inspection => {
  if (lot.resubmitted === true || inspection.severity === 'stopped') return inspection;

  const recent = [...inspection.recent, lot.accepted].slice(-5);
  switch (inspection.severity) {
    case 'normal':
      return afterNormal({ ...inspection, recent }, lot, mayReduce);
    case 'tightened':
      return afterTightened({ ...inspection, recent }, lot);
    case 'reduced':
      return lot.accepted && lot.between !== true && mayReduce ? { ...inspection, recent } : startInspection;
  }
};

/** Two of five or fewer not accepted: tightened. Comfortable lots score two; at thirty inspection may be reduced. */
const afterNormal = (inspection: Inspection, lot: LotResult, mayReduce: boolean): Inspection => {
  if (inspection.recent.filter((accepted) => !accepted).length >= 2) {
    return { ...startInspection, severity: 'tightened' };
  }
  const score = lot.accepted && lot.comfortably === true ? inspection.score + 2 : 0;
  return score >= REDUCE_AT && mayReduce
    ? { ...startInspection, severity: 'reduced' }
    : { ...inspection, score };
};

/** Five accepted in a row: back to normal. Five not accepted in all: stop, until the supplier has improved. */
const afterTightened = (inspection: Inspection, lot: LotResult): Inspection => {
  const refusedTightened = inspection.refusedTightened + (lot.accepted ? 0 : 1);
  if (refusedTightened >= 5) return { ...inspection, refusedTightened, severity: 'stopped' };
  if (inspection.recent.length === 5 && inspection.recent.every(Boolean)) return startInspection;

  return { ...inspection, refusedTightened };
};

/** The supplier has improved: inspection resumes, tightened. */
export const resumeInspection: Inspection = { ...startInspection, severity: 'tightened' };
