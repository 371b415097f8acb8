/** What is remarkable about an operation's record. A correction is no guilt: it is shown and weighs nothing. */
export const RECORD_MARKS = [
  'missing',
  'late',
  'corrected',
  'refused',
  'near-limit',
  'out-of-limit',
  'reworked',
  'defect',
  'covered-soon',
  'instrument-out',
] as const;
export type RecordMark = (typeof RECORD_MARKS)[number];

/** One operation of one section (or of the home at its site), as the record has it. */
export type WorkRow = {
  /** The serial of the section, or the home for work on the whole home. */
  readonly unit: string;
  readonly operation: string;
  readonly station: string;
  /** Instant or date of the work; null where nothing was recorded. */
  readonly at: string | null;
  readonly crew: string | null;
  readonly shift: string | null;
  readonly lots: readonly string[];
  readonly instruments: readonly string[];
  readonly revision: string | null;
  /** `missing` where the build plan asks for the operation and no record proves it. */
  readonly marks: readonly RecordMark[];
};

export type HomeRow = {
  readonly home: string;
  readonly sections: readonly { readonly serial: string; readonly role: string | null }[];
  readonly model: string | null;
  /** The day its first section entered the line. */
  readonly builtOn: string | null;
  readonly occupiedOn: string | null;
  readonly where: 'line' | 'yard' | 'sold';
  readonly hauler: string | null;
  readonly installer: string | null;
  readonly retailer: string | null;
  readonly work: readonly WorkRow[];
};

/** What the technician saw on opening it up, in codes: operations, or outside causes of the fault map. */
export type AsFound = {
  readonly pointsTo: readonly string[];
  readonly speaksAgainst: readonly string[];
};

export type ClaimRow = {
  readonly claim: string;
  readonly home: string;
  /** The serial of the section it was noticed in, where that is known. */
  readonly section: string | null;
  readonly component: string;
  readonly symptom: string;
  readonly place: string | null;
  readonly noticedOn: string | null;
  readonly asFound: AsFound | null;
};

export type LotRow = { readonly lot: string; readonly maker: string | null };

/** A row of the rulebook's fault map, as libs/rulebook reads it. */
export type FaultRow = {
  readonly component: string;
  readonly symptom: string;
  readonly causes: readonly { readonly operation: string; readonly weight: 'a' | 'b' | 'c' }[];
  readonly elsewhere: readonly { readonly cause: string; readonly weight: 'a' | 'b' | 'c' }[];
};

export type OperationRow = { readonly operation: string; readonly station: string };

/** What a pattern within or among homes speaks for and against: operations, or outside causes of the fault map. */
export type PatternRow = {
  readonly pattern: PatternName;
  /** For `place`: where. Empty elsewhere. */
  readonly places: readonly string[];
  readonly pointsTo: readonly string[];
  readonly speaksAgainst: readonly string[];
};
export const PATTERNS = ['place', 'at-once', 'first-cold-season', 'after-a-year'] as const;
export type PatternName = (typeof PATTERNS)[number];

/** How often each mark is found on an operation's records: the station's own habit, by which a mark is weighed. */
export type HabitRow = {
  readonly operation: string;
  readonly mark: RecordMark;
  readonly count: number;
  readonly of: number;
};

export type TraceInput = {
  readonly component: string;
  readonly symptom: string;
  readonly asOf: string;
  readonly claims: readonly ClaimRow[];
  readonly homes: readonly HomeRow[];
  readonly lots: readonly LotRow[];
  readonly faults: readonly FaultRow[];
  readonly operations: readonly OperationRow[];
  readonly patterns: readonly PatternRow[];
};
