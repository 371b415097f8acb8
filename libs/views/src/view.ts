import type { RecordedUnitEvent } from '@libs/record';

/** What an index column or a counter holds. */
export type Cell = string | number | null;
export type Kind = 'text' | 'whole';

/** A table a view's rows go to, kept so that screens read rows and never the log. */
export type RowTable = {
  readonly columns: { readonly [column: string]: Kind };
  readonly indexes: readonly (readonly string[])[];
};

/** A table of sums. `parts` name what is counted (a day first, where there is one), `numbers` are added up. */
export type CounterTable = { readonly parts: readonly string[]; readonly numbers: readonly string[] };

export type Row = {
  readonly table: string;
  readonly key: string;
  readonly cells: { readonly [column: string]: Cell };
};
/** One detail's share of a sum: parts and numbers in the order their table names them. */
export type Count = {
  readonly table: string;
  readonly parts: readonly string[];
  readonly numbers: readonly number[];
};

/**
 * A question answered ahead of time. Pure: every time comes from the event; no view reads a clock or another view.
 * Rows and counts follow from the detail alone, and the keeper applies the difference between the old detail's and
 * the new one's. That is why late, corrected and withdrawn events come out right without a case of their own.
 */
export type View<D> = {
  readonly name: string;
  /** Raised whenever `apply`, `rows` or `counts` would now say something else: the view is then built anew. */
  readonly version: number;
  /** Details this event bears on. Most often its stream. */
  readonly keysOf: (event: RecordedUnitEvent) => readonly string[];
  /**
   * Returns the very same detail when nothing changes: then nothing is written. Details are stored as they are spelt
   * out, so none takes over an object from an event: fresh from its decision, its members stand in another order
   * than when it is read from the log.
   */
  readonly apply: (detail: D | undefined, event: RecordedUnitEvent, key: string) => D | undefined;
  /** What is stored of a detail, where that is worked out only once it is written. Left out: the detail itself. */
  readonly stored?: (detail: D) => D;
  readonly rowTables: { readonly [table: string]: RowTable };
  readonly rows: (detail: D, key: string) => readonly Row[];
  readonly counterTables: { readonly [table: string]: CounterTable };
  readonly counts: (detail: D) => readonly Count[];
};

/** A view whose detail type has been checked and put away, so that several fit one list. */
export type AnyView = View<unknown>;

/** The one place where a detail's type is erased: what is handed back under a view's name came from that view. */
export const anyView = <D>(view: View<D>): AnyView => ({
  ...view,
  stored: (detail) => view.stored?.(known<D>(detail)) ?? detail,
  apply: (detail, event, key) => view.apply(known<D | undefined>(detail), event, key),
  rows: (detail, key) => view.rows(known<D>(detail), key),
  counts: (detail) => view.counts(known<D>(detail)),
});

/** Says to the compiler what the view's name has said already. */
const known = <T>(value: unknown): T => value as T;
