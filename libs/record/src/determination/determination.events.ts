import type { Recorded } from '@libs/kernel';

/** The file of one determination (24 CFR 3282.404, 3282.417): who decided what, by what methods, on what bases, and when. */
export type DeterminationEvent =
  | DeterminationOpened
  | InitiallyDetermined
  | ClassDetermined
  | AgencyPositionTaken
  | PlanSubmitted
  | PlanApproved
  | HomeRemedied
  | CompletionReported
  | GovernmentNotified
  | CountingRuleSet;

/** The four of 42 U.S.C. 5402 and 24 CFR 3282.7, and that none applies. */
export type DeterminedSeverity =
  'imminent-safety-hazard' | 'serious-defect' | 'defect' | 'noncompliance' | 'no-action';

/** Opened on claims: the evidence and the exposure as they stood, frozen. */
export type DeterminationOpened = {
  readonly type: 'DeterminationOpened';
  readonly data: {
    readonly determination: string;
    readonly claims: readonly string[];
    /** The day the first information came: the 30 days count from it. */
    readonly receivedOn: string;
    /** The ledger's position the evidence was taken at. */
    readonly asOfPosition: number;
    /** The trace as it stood: canonical JSON, as `studbook trace --json` gives it. */
    readonly trace: string;
    /** The key of the cause chosen; null: none yet. */
    readonly cause: string | null;
    readonly method: 'exact' | 'whole-group';
    readonly exposure: readonly {
      readonly home: string;
      readonly where: string;
      readonly reason: string;
      readonly sections: readonly string[];
    }[];
  };
};
export type InitiallyDetermined = {
  readonly type: 'InitiallyDetermined';
  readonly data: {
    readonly determination: string;
    readonly severity: DeterminedSeverity;
    readonly decidedOn: string;
    /** Of 3282.404(c): `i` to `vii`. */
    readonly methods: readonly string[];
    /** Sealed. */
    readonly bases: string;
  };
};
export type ClassDetermined = {
  readonly type: 'ClassDetermined';
  readonly data: {
    readonly determination: string;
    readonly decidedOn: string;
    /** Serial numbers of all homes in the class; empty: there is no class. */
    readonly homes: readonly string[];
    readonly methods: readonly string[];
    readonly bases: string;
  };
};
/** Written concurrence on the methods, or a statement why not (3282.404(b)(4)). */
export type AgencyPositionTaken = {
  readonly type: 'AgencyPositionTaken';
  readonly data: {
    readonly determination: string;
    readonly concurs: boolean;
    readonly takenOn: string;
    /** The letter. */
    readonly reference: string;
    readonly note?: string;
  };
};
export type PlanSubmitted = {
  readonly type: 'PlanSubmitted';
  readonly data: { readonly determination: string; readonly submittedOn: string; readonly reference: string };
};
export type PlanApproved = {
  readonly type: 'PlanApproved';
  readonly data: {
    readonly determination: string;
    readonly approvedOn: string;
    /** Dates the approver set; null: none was. */
    readonly noticesBy: string | null;
    readonly correctBy: string | null;
    readonly reference: string;
  };
};
export type HomeRemedied = {
  readonly type: 'HomeRemedied';
  readonly data: {
    readonly determination: string;
    readonly home: string;
    /** Refused: told of the problem and of its hazards, and a repair was attempted (3282.417). */
    readonly how: 'notified' | 'corrected' | 'refused';
    readonly doneOn: string;
    readonly note?: string;
  };
};
export type CompletionReported = {
  readonly type: 'CompletionReported';
  readonly data: { readonly determination: string; readonly reportedOn: string; readonly reference: string };
};
/** HUD, the state agency of manufacture and the inspection agency told at once (3282.404(a)(2)). */
export type GovernmentNotified = {
  readonly type: 'GovernmentNotified';
  readonly data: { readonly determination: string; readonly notifiedOn: string; readonly reference: string };
};
/** How the plant counts days, as counsel has it (24 CFR 26.16(a) by way of 3282.9). One stream for all files. */
export type CountingRuleSet = {
  readonly type: 'CountingRuleSet';
  readonly data: {
    readonly determination: string;
    readonly lastDay: 'next-working-day' | 'as-it-falls';
    readonly daysOff: readonly number[];
    readonly holidays: readonly string[];
    readonly warnDays: number;
  };
};
export type RecordedDeterminationEvent = Recorded<DeterminationEvent>;
