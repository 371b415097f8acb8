import type { Hide, PlannedOperation, PlannedValue, Source, Test, TimeRule } from '@libs/judge';

/** What must be so of a design for a row to speak: one test an attribute. */
export type When = readonly { readonly attribute: string; readonly test: Test }[];

/** An attribute's values, for working out which designs there can be. */
export type Domain = {
  readonly id: string;
  readonly numeric: boolean;
  /** Of one section, not of the home. */
  readonly ofSection: boolean;
  /** From the least to the most: a design for a later value is good where an earlier one is asked. */
  readonly rising: boolean;
  /** Empty for a numeric attribute that may take any number. */
  readonly values: readonly string[];
};

/** What a variant of an operation may put in place of the rest. */
export type OperationFields = Omit<
  PlannedOperation,
  'id' | 'requires' | 'expects' | 'hides' | 'values' | 'times' | 'substitutes'
> & {
  readonly hard: readonly string[];
  readonly sourceOf: (required: string) => Source;
  readonly soft: readonly string[];
};

export type OperationRow = {
  readonly id: string;
  readonly file: string;
  readonly row: number;
  readonly when: When;
  readonly fields: OperationFields;
  /** The first that matches replaces some of the fields. */
  readonly variants: readonly { readonly when: When; readonly fields: Partial<OperationFields> }[];
};

export type CoverRow = {
  readonly row: number;
  readonly when: When;
  readonly cover: string;
  readonly hide: Hide;
};

export type ValueRow = {
  readonly row: number;
  readonly when: When;
  readonly operation: string;
  readonly planned: PlannedValue;
  /** Detail or attribute of the design that gives the required value. */
  readonly asDesign: string | null;
};

export type TimeRow = {
  readonly row: number;
  readonly when: When;
  readonly operation: string;
  readonly rule: TimeRule;
};

/** What a county asks of a design that is to stand in it: a value for each of some attributes. */
export type County = { readonly row: number; readonly zones: { readonly [attribute: string]: string } };

/** The rows of a rulebook as compiled, filed so that resolving looks at no row twice. */
export type RulebookBody = {
  readonly domains: ReadonlyMap<string, Domain>;
  readonly details: ReadonlySet<string>;
  /** Attributes some row asks about: a design must give these. */
  readonly askedAttributes: ReadonlySet<string>;
  readonly operations: readonly OperationRow[];
  /** By cover, then by what it hides: a decision table each. */
  readonly covers: ReadonlyMap<string, readonly (readonly CoverRow[])[]>;
  /** By operation, then by characteristic, in file order: a decision table each. */
  readonly values: ReadonlyMap<string, readonly (readonly ValueRow[])[]>;
  /** By operation, then by the one it comes after: a decision table each. */
  readonly times: ReadonlyMap<string, readonly (readonly TimeRow[])[]>;
  /** By kind of lot, the kinds approved in its place. */
  readonly substitutes: ReadonlyMap<string, readonly string[]>;
  /** By county; `*` stands for every county that is not listed. */
  readonly counties: ReadonlyMap<string, County>;
};

/** In a list of hard-required operations: every applicable one of earlier stations. */
export const ALL_DUE = 'all-due';
