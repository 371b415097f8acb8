import type { CompiledPlan, Design, PlannedOperation, PlannedStation, Words } from '@libs/judge';

/** A rulebook's files by name (`plant.yaml`, `operations.yaml`, `values.csv`, ...): what is issued and kept in the ledger. */
export type RulebookFiles = { readonly [name: string]: string };

/** One complaint about a rulebook: where, and what to do. Rows and columns count from 1. */
export type RulebookProblem = {
  readonly file: string;
  readonly row: number;
  readonly column: string | null;
  readonly says: string;
};

export type Named = { readonly id: string; readonly name: Words };

export type Attribute = Named & {
  readonly values: readonly { readonly value: string; readonly says: Words }[];
  /** Numeric attributes compare as decimals. */
  readonly numeric: boolean;
};

export type Station = PlannedStation & {
  /** Design attributes whose facts matter here, in order. */
  readonly facts: readonly string[];
  readonly lotKinds: readonly string[];
};

export type Fault = {
  readonly component: string;
  readonly symptom: string;
  /** Likeliest first. `weight` is a stated starting point. */
  readonly causes: readonly { readonly operation: string; readonly weight: 'a' | 'b' | 'c' }[];
  readonly elsewhere: readonly { readonly cause: string; readonly weight: 'a' | 'b' | 'c' }[];
  readonly caughtBy: readonly string[];
};

/** A rulebook as read: validated, every cell compiled. `rows` and the like stay inside this library. */
export type Rulebook = {
  readonly name: string;
  readonly zone: string;
  readonly enforced: boolean;
  readonly stations: readonly Station[];
  readonly crews: readonly Named[];
  readonly places: readonly Named[];
  readonly attributes: readonly Attribute[];
  readonly details: readonly Named[];
  /** Reason codes for holds, pulls and corrections. */
  readonly reasons: readonly (Named & { readonly for: readonly string[] })[];
  readonly lotKinds: readonly (Named & { readonly traced: boolean })[];
  readonly instrumentKinds: readonly (Named & { readonly calibrated: boolean })[];
  readonly components: readonly Named[];
  readonly symptoms: readonly Named[];
  readonly faults: readonly Fault[];
  /** Every operation, whatever the design, with its words and station. */
  readonly operations: readonly Pick<PlannedOperation, 'id' | 'station' | 'name' | 'crew' | 'entry' | 'scope'>[];
};

export type ReadRulebook =
  | { readonly ok: true; readonly rulebook: Rulebook }
  | { readonly ok: false; readonly problems: readonly RulebookProblem[] };

/** Reads and validates all files, every problem at once. Pure; YAML and CSV parsers are reviewed packages. */
export declare const readRulebook: (files: RulebookFiles) => ReadRulebook;

/**
 * The build plan of one section's design (or of a home at its site: the home-scoped operations).
 * Throws nothing: a design attribute that is unknown or missing comes back as a problem.
 */
export declare const resolvePlan: (
  rulebook: Rulebook,
  revision: number,
  design: Design,
  sha256Hex: (text: string) => string,
) => { readonly ok: true; readonly plan: CompiledPlan } | { readonly ok: false; readonly problems: readonly RulebookProblem[] };

/** A rulebook for a log that came without one: its operations and stations, no order enforced. */
export declare const openRulebook: (log: {
  readonly name: string;
  readonly zone: string;
  readonly stations: readonly string[];
  readonly operations: readonly { readonly id: string; readonly station: string }[];
}) => RulebookFiles;
