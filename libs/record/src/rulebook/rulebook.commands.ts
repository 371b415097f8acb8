/** The revision's number is the next one: two issued at once do not share it. */
export type RulebookCommand = {
  readonly type: 'IssueRevision';
  readonly data: {
    readonly effectiveFrom: string;
    readonly files: { readonly [name: string]: string };
    readonly digest: string;
    readonly approvedBy: string | null;
    readonly note?: string;
  };
};
