import type { Recorded } from '@libs/kernel';

export type RulebookEvent = RevisionIssued;

/** The revision's files go into the ledger whole, so that history can be judged from the ledger alone. */
export type RevisionIssued = {
  readonly type: 'RevisionIssued';
  readonly data: {
    readonly revision: number;
    readonly effectiveFrom: string;
    readonly files: { readonly [name: string]: string };
    readonly digest: string;
    readonly approvedBy: string | null;
    readonly note?: string;
  };
};
export type RecordedRulebookEvent = Recorded<RulebookEvent>;
