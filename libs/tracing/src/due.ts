export type Suspect = {
  readonly source: string;
  /** Places in `claimed` that belong to the group, and of which nobody knows. */
  readonly belong: readonly number[];
  readonly partly: readonly number[];
  /** The group was made by what was recorded, so that a missing record says nothing more. */
  readonly recordsKnown: boolean;
};

/** The chance that a claim is due to the cause: for units that belong, and for those of which nobody knows. */
export type Due = { readonly belong: number; readonly partly: number };
