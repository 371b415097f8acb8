import type { Recorded } from '@libs/kernel';

/** A complaint from any source, and what became of it (24 CFR 3282.403, 3282.404(a)). */
export type ClaimEvent =
  ComplaintLogged | ComplaintDismissed | ClaimOpened | AsFoundReported | CauseConfirmed | ClaimDetermined;

/** Whatever comes in is logged with the day it came: that day starts the clock. */
export type ComplaintLogged = {
  readonly type: 'ComplaintLogged';
  readonly data: {
    readonly claim: string;
    /** `2026-03-14`. */
    readonly receivedOn: string;
    readonly source: ComplaintSource;
    /** Null: it does not say which home. */
    readonly home: string | null;
    /** As it was put; sealed. */
    readonly words?: string;
    /** SHA-256 of each. */
    readonly photos: readonly string[];
  };
};
export type ComplaintSource =
  'owner' | 'retailer' | 'installer' | 'technician' | 'agency' | 'state' | 'federal' | 'plant' | 'other';
/** No failure, because ... */
export type ComplaintDismissed = {
  readonly type: 'ComplaintDismissed';
  readonly data: {
    readonly claim: string;
    /** Why there is no failure; sealed. */
    readonly because: string;
  };
};
/** A failure of a home: something to be traced. */
export type ClaimOpened = {
  readonly type: 'ClaimOpened';
  readonly data: {
    readonly claim: string;
    readonly home: string;
    readonly section: string | null;
    readonly component: string;
    readonly symptom: string;
    readonly place: string | null;
    readonly noticedOn: string | null;
  };
};
/** What was seen when it was opened up, in codes: operations, or outside causes of the fault map. */
export type AsFoundReported = {
  readonly type: 'AsFoundReported';
  readonly data: {
    readonly claim: string;
    readonly pointsTo: readonly string[];
    readonly speaksAgainst: readonly string[];
    readonly photos: readonly string[];
    /** Sealed. */
    readonly note?: string;
  };
};
/** Somebody has decided what caused it: from here it goes to the station, the rulebook and the homes that share it. */
export type CauseConfirmed = {
  readonly type: 'CauseConfirmed';
  readonly data: {
    readonly claim: string;
    /** The key of the cause in the claim's trace. */
    readonly cause: string;
    /** Null: outside the line. */
    readonly operation: string | null;
    readonly outside: string | null;
    readonly factor: string;
    readonly value: string | null;
    /** Sealed. */
    readonly note?: string;
  };
};
/**
 * Decided on the claim itself, where no class of homes is in question (24 CFR 3282.404(a)(1), 3282.405(b)(1)): no
 * action is needed, or a noncompliance of this home alone. Anything graver has a file of its own.
 */
export type ClaimDetermined = {
  readonly type: 'ClaimDetermined';
  readonly data: {
    readonly claim: string;
    readonly severity: 'noncompliance' | 'no-action';
    readonly decidedOn: string;
    /** Sealed. */
    readonly bases: string;
  };
};
export type RecordedClaimEvent = Recorded<ClaimEvent>;
