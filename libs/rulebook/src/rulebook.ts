import type { CompiledPlan, PlannedOperation, PlannedStation, Words } from '@libs/judge';
import type { RulebookBody } from './body';

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

/** `insteadOf`: kinds it may be used in place of, as approved. */
export type LotKind = Named & { readonly traced: boolean; readonly insteadOf: readonly string[] };

/** One line of the data plate: of the home itself, its design, what was recorded of it, or a text that is always there. */
export type PlateLine = Named & {
  readonly from: 'serial' | 'model' | 'made' | 'labels' | 'design' | 'recorded' | 'text';
  readonly of: readonly string[];
  readonly text: Words | null;
  /** Only on homes whose design has exactly this. */
  readonly when: { readonly [attribute: string]: string };
};

/** A rulebook as read: validated, every cell compiled. */
export type Rulebook = {
  readonly name: string;
  readonly zone: string;
  readonly enforced: boolean;
  readonly stations: readonly Station[];
  readonly crews: readonly Named[];
  readonly places: readonly Named[];
  readonly attributes: readonly Attribute[];
  readonly details: readonly Named[];
  /** Values that are named in words, in both languages. */
  readonly texts: readonly Named[];
  /** What the data plate says; empty where the plant keeps it elsewhere. */
  readonly plate: readonly PlateLine[];
  /** Reason codes for holds, pulls and corrections. */
  readonly reasons: readonly (Named & { readonly for: readonly string[] })[];
  readonly lotKinds: readonly LotKind[];
  readonly instrumentKinds: readonly (Named & { readonly calibrated: boolean })[];
  readonly components: readonly Named[];
  readonly symptoms: readonly Named[];
  readonly faults: readonly Fault[];
  /** Every operation, whatever the design, with its words and station. */
  readonly operations: readonly Pick<
    PlannedOperation,
    'id' | 'station' | 'name' | 'crew' | 'entry' | 'scope'
  >[];
  /** Its rows as compiled, for `resolvePlan`: nobody else's concern. */
  readonly body: RulebookBody;
};

export type ReadRulebook =
  | { readonly ok: true; readonly rulebook: Rulebook }
  | { readonly ok: false; readonly problems: readonly RulebookProblem[] };

export type ResolvedPlan =
  | { readonly ok: true; readonly plan: CompiledPlan }
  | { readonly ok: false; readonly problems: readonly RulebookProblem[] };
