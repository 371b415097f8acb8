/** What came of an import. `refused` rows are in the file named, with line and reason. */
export type ImportSummary = {
  readonly file: string;
  readonly rows: number;
  readonly taken: number;
  /** Rows that the mapping says are no completed work. */
  readonly passedOver: number;
  readonly refused: number;
  readonly rejectedFile: string | null;
  readonly position: number;
};

/** `added`: events that were not there before. */
export const summaryText = (summary: ImportSummary & { readonly added: number }): string =>
  [
    `${summary.file}: ${summary.rows} rows, ${summary.taken} taken` +
      (summary.passedOver > 0 ? `, ${summary.passedOver} passed over` : '') +
      `, ${summary.refused} refused.`,
    ...(summary.rejectedFile === null ? [] : [`Refused rows, with line and reason: ${summary.rejectedFile}`]),
    summary.added === 0
      ? `Nothing new: what was taken was in the ledger already, at position ${summary.position}.`
      : `The ledger stands at position ${summary.position}, ${summary.added} events more than before.`,
  ].join('\n');
