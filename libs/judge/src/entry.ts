/** What is told, and what is known so far: the judge's two other inputs besides the plan. */

/** `signed` by the crew; `seen` before cover by someone qualified not of the crew; `reconstructed` after cover. */
export type Proof = 'signed' | 'seen' | 'reconstructed';

export type RecordedValue = {
  readonly characteristic: string;
  /** Measures and counts are decimal strings as entered; yes/no is `yes` or `no`. */
  readonly value: string;
  /** UCUM code as entered; null where the kind has no unit. */
  readonly unit: string | null;
  readonly place?: string;
};

/** A lot as a section inherits it: what it is, and what its certificate says (`{'strap-width': ...}`). */
export type WorkedLot = {
  readonly lot: string;
  readonly kind: string;
  readonly usable: boolean;
  readonly properties: readonly RecordedValue[];
};

export type UsedInstrument = {
  readonly instrument: string;
  readonly kind: string;
  readonly usable: boolean;
  /** Last day its calibration holds; null or absent: it does not run out. */
  readonly dueOn?: string | null;
  readonly properties: readonly RecordedValue[];
};

/** Who signs: an opaque id, the crew they stand in for, the roles and qualifications they hold. */
export type Signer = {
  readonly actor: string;
  readonly crew: string | null;
  readonly roles: readonly string[];
  /** What they may sign for besides, and until which day: an acting lead's crew, a badge that runs out. */
  readonly qualifications?: readonly Qualification[];
};

/** `crew:quality` or `role:inspector`, as the rulebook's `signers` have it. `until`: the last day; null: for good. */
export type Qualification = { readonly token: string; readonly until: string | null };

export type Entry = {
  readonly operation: string;
  readonly proof: Proof;
  /** Done except at these places. */
  readonly except: readonly string[];
  readonly values: readonly RecordedValue[];
  readonly lots: readonly WorkedLot[];
  readonly instrument: UsedInstrument | null;
  /** SHA-256 of each photo. */
  readonly photos: readonly string[];
  readonly signer: Signer;
  /** Where it was really done; null when the device does not know. */
  readonly station: string | null;
  readonly occurredAt: string;
};

export type Asking = {
  readonly operation: string;
  readonly except: readonly string[];
  /** When it is to be done; unknown: no rule about time speaks. */
  readonly occurredAt?: string;
};

export type DoneWork = {
  readonly proof: Proof;
  readonly except: readonly string[];
  readonly values: readonly RecordedValue[];
  readonly actor: string;
  readonly crew: string | null;
  readonly occurredAt: string;
  readonly position: number;
  /** Characteristics asked for and not given, so the work is there and its record is not. */
  readonly missing: readonly string[];
};

export type OpenDefect = {
  readonly defect: string;
  readonly class: 'nonconformance' | 'punch' | 'shortage' | 'record';
  readonly operation: string | null;
  readonly place: string | null;
  readonly component: string;
  readonly symptom: string;
  readonly station: string | null;
  readonly state: 'open' | 'reworked';
  readonly reworkedBy: string | null;
  /** How many there are; one where it is not said. */
  readonly quantity?: number;
  readonly severity?: 'minor' | 'major' | 'critical';
  /** What was decided to become of it. */
  readonly disposition?: 'rework' | 'repair' | 'use-as-is' | 'scrap';
};

export type OpenHold = {
  readonly hold: string;
  readonly reason: string;
  /** The operation the hold is about; null: the whole section. */
  readonly operation: string | null;
  readonly characteristic: string | null;
  readonly defect: string | null;
  readonly since: string;
};

/** What is known of a section (and of its home) so far. */
export type WorkState = {
  readonly work: { readonly [operation: string]: DoneWork };
  readonly defects: readonly OpenDefect[];
  readonly holds: readonly OpenHold[];
};
