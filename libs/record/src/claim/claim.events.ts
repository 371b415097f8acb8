import type { Recorded } from '@libs/kernel';

/** A complaint from any source, and what became of it (24 CFR 3282.403, 3282.404(a)). */
export type ClaimEvent = ComplaintLogged | ComplaintDismissed | ClaimOpened | AsFoundReported;

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
export type RecordedClaimEvent = Recorded<ClaimEvent>;
