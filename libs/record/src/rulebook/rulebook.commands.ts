import type { AgencyApproval, RevisionProposed, Touches } from './rulebook.events';

export type RulebookCommand = IssueRevision | ProposeRevision | ApproveProposal | ReturnProposal;

/** Issued at the machine itself. The revision's number is the next one: two issued at once do not share it. */
export type IssueRevision = {
  readonly type: 'IssueRevision';
  readonly data: {
    readonly effectiveFrom: string;
    readonly files: { readonly [name: string]: string };
    readonly digest: string;
    readonly approvedBy: string | null;
    readonly touches?: Touches;
    readonly agency?: AgencyApproval;
    readonly note?: string;
  };
};
export type ProposeRevision = { readonly type: 'ProposeRevision'; readonly data: RevisionProposed['data'] };
export type ApproveProposal = {
  readonly type: 'ApproveProposal';
  readonly data: {
    readonly proposal: string;
    /** Where it came in only now; else the one it was handed in with stands. */
    readonly agency: AgencyApproval | null;
  };
};
/** Whoever drafted it withdraws it; anyone else sends it back. */
export type ReturnProposal = {
  readonly type: 'ReturnProposal';
  readonly data: { readonly proposal: string; readonly note?: string };
};
