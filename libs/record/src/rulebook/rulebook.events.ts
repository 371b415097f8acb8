import type { Recorded } from '@libs/kernel';

export type RulebookEvent = RevisionIssued | RevisionProposed | ProposalReturned;

/** What the inspection agency approved: its letter or stamp, and the day on it (24 CFR 3282.361). */
export type AgencyApproval = { readonly reference: string; readonly approvedOn: string };

/** What a revision changes that the inspection agency has approved before: the design, the manual, or neither. */
export type Touches = { readonly design: boolean; readonly manual: boolean };

/** The revision's files go into the ledger whole, so that history can be judged from the ledger alone. */
export type RevisionIssued = {
  readonly type: 'RevisionIssued';
  readonly data: {
    readonly revision: number;
    readonly effectiveFrom: string;
    readonly files: { readonly [name: string]: string };
    readonly digest: string;
    /** Null: issued at the machine itself, and nobody named as approving it. */
    readonly approvedBy: string | null;
    readonly note?: string;
    /** The proposal it comes from, and whose it was; absent: issued at the machine itself. */
    readonly proposal?: string;
    readonly draftedBy?: string;
    readonly touches?: Touches;
    readonly agency?: AgencyApproval;
  };
};
/** A draft handed in for a second person to approve. Its files go in whole: what was approved is what was seen. */
export type RevisionProposed = {
  readonly type: 'RevisionProposed';
  readonly data: {
    readonly proposal: string;
    /** The revision it was compared with; null: there was none. */
    readonly base: number | null;
    /** Null: from the moment it is approved. */
    readonly effectiveFrom: string | null;
    readonly files: { readonly [name: string]: string };
    readonly digest: string;
    readonly touches: Touches;
    readonly agency: AgencyApproval | null;
    /** Why; sealed. */
    readonly note?: string;
  };
};
/** Not approved, or taken back by whoever drafted it. */
export type ProposalReturned = {
  readonly type: 'ProposalReturned';
  readonly data: {
    readonly proposal: string;
    readonly how: 'returned' | 'withdrawn';
    readonly note?: string;
  };
};
export type RecordedRulebookEvent = Recorded<RulebookEvent>;
