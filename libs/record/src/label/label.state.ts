/** The serial a label number is on; null: it has not been used. */
export type Label = { readonly serial: string | null };

export const unusedLabel: Label = { serial: null };
