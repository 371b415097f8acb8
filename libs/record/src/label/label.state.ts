/** Where a label number is: the serial it is on or was on, and what became of it. */
export type Label = {
  readonly serial: string | null;
  readonly became: 'unused' | 'used' | 'void' | 'reclaimed' | 'replaced';
  readonly replacedBy: string | null;
};

export const unusedLabel: Label = { serial: null, became: 'unused', replacedBy: null };
