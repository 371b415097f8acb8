/** What sets the homes that share a cause apart from the others. */
export const FACTORS = [
  'lot',
  'maker',
  'crew',
  'shift',
  'instrument',
  'design',
  'revision',
  'window',
  'unrecorded',
  'hauler',
  'installer',
  'retailer',
  'every',
] as const;
export type Factor = (typeof FACTORS)[number];

/**
 * One thing that may have caused the claims: an operation at its station, or a cause outside the line, and what of it.
 * `unrecorded`: the operation was perhaps never done; `window`: a stretch of time; `every`: the way it is always done.
 */
export type Cause = {
  readonly operation: string | null;
  readonly station: string | null;
  /** A code of the fault map (`x-road`, `office`); null for an operation of the line. */
  readonly outside: string | null;
  readonly factor: Factor;
  /** The lot, the crew, `2026-02-02..2026-03-08` for a window; null where the factor needs none. */
  readonly value: string | null;
  /** For a window: the stretch outside which the claims leave no room for it. */
  readonly widest?: string;
};

/** The operation or the outside cause: what the fault map and an as-found report speak of. */
export const sourceOf = (cause: Cause): string => cause.outside ?? cause.operation ?? '';

/** One cause, one key: stable in links, in exports, in a frozen determination file. */
export const causeKey = (cause: Cause): string =>
  [sourceOf(cause), cause.factor, ...(cause.value === null ? [] : [cause.value])].join('/');
