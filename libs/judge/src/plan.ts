/** A build plan as compiled by the rulebook: plain JSON data, all a judge needs, the same on a tablet. */

/** Words shown to people, by language. */
export type Words = { readonly en: string; readonly es: string };

/** `refuse`: an asking is refused; told as done it is a hold. `hold`: stops at the next gate. `note`: said once. */
export type Grade = 'refuse' | 'hold' | 'note';

export type FindingClass = 'nonconformance' | 'punch' | 'shortage' | 'record';

/** On whose authority a rule speaks. `row` names the rulebook file and line: `values.csv:34`. */
export type Source = {
  readonly kind: 'published' | 'practice' | 'memory' | 'design' | 'derived';
  readonly reference: string;
  readonly row: string;
};

/** A FEEL unary test, compiled to plain data when the rulebook is read. Numbers are decimal strings. */
export type Test =
  | { readonly is: 'any' }
  | { readonly is: 'compare'; readonly op: '<' | '<=' | '>' | '>=' | '='; readonly number: string }
  | {
      readonly is: 'interval';
      readonly from: string;
      readonly fromClosed: boolean;
      readonly to: string;
      readonly toClosed: boolean;
    }
  /** Calendar days, `2026-05-01`: they compare as text. */
  | { readonly is: 'day'; readonly op: '<' | '<=' | '>' | '>=' | '='; readonly day: string }
  | {
      readonly is: 'days';
      readonly from: string;
      readonly fromClosed: boolean;
      readonly to: string;
      readonly toClosed: boolean;
    }
  | { readonly is: 'text'; readonly text: string }
  | { readonly is: 'boolean'; readonly boolean: boolean }
  | { readonly is: 'anyOf'; readonly tests: readonly Test[] }
  | { readonly is: 'not'; readonly test: Test };

/** `sum(left) op sum(right)`, each term a rational factor times a characteristic of the same operation, or a constant. */
export type Relation = {
  readonly left: readonly RelationTerm[];
  readonly op: '<' | '<=' | '=' | '>=' | '>';
  readonly right: readonly RelationTerm[];
};
export type RelationTerm = {
  readonly factor: string;
  readonly characteristic: string | null;
  /** Of a constant: its UCUM unit. None: it counts in the base unit of what it is compared with. */
  readonly unit?: string;
};
/** Ways of meeting a requirement: one of them in all its parts is enough. */
export type Alternatives = readonly (readonly Relation[])[];

/** `12 h`, as a decimal and a UCUM unit of time. */
export type Span = { readonly value: string; readonly unit: string };

/** How long after another operation this one may come: mud dries so long, a test is not older than so long. */
export type TimeRule = {
  readonly since: string;
  readonly atLeast: Span | null;
  readonly atMost: Span | null;
  readonly grade: Grade;
  readonly source: Source;
};

export type ValueKind = 'measure' | 'count' | 'choice' | 'yes-no' | 'text' | 'date' | 'derived';

/** One characteristic of an operation and what is required of it for this design. */
export type PlannedValue = {
  readonly characteristic: string;
  readonly label: Words;
  readonly kind: ValueKind;
  /** UCUM code of the requirement; null where the kind has no unit. */
  readonly unit: string | null;
  readonly test: Test;
  /** The requirement as the table has it: `>= 7`. Empty: any value, but one must be given. */
  readonly required: string;
  readonly relation?: Relation;
  /** In place of `relation`: several ways, `voltage >= 900 and time >= 60 or ...`. */
  readonly alternatives?: Alternatives;
  readonly choices?: readonly string[];
  readonly grade: Grade;
  readonly source: Source;
  /** Who fills it in. `lot` and `instrument` are never typed. */
  readonly from: 'entry' | 'lot' | 'instrument';
  readonly lotKind?: string;
  /** Asked always, or only where the thing occurs at all (holes in joists). */
  readonly asked: 'always' | 'where-any';
  /** How many places the lead checks, recording the worst; 1 when there is just the one. */
  readonly worstOf: number;
  /**
   * Places it is read at. With `worstOf` 1 a reading is asked for at each of them; with more, so many of them are
   * named for each serial, by lot.
   */
  readonly places?: readonly string[];
};

export type Edge = { readonly operation: string; readonly source: Source };

/** `any`: gone from sight with this cover. `second`: when another face is closed too. `lift`: can be lifted by hand. */
export type Hide = {
  readonly operation: string;
  readonly hidden: 'any' | 'second' | 'lift';
  /** For `second`: the operations that close the other face. Empty: this cover alone hides it. */
  readonly otherFace: readonly string[];
  readonly grade: Grade;
  readonly source: Source;
};

export type PlannedOperation = {
  readonly id: string;
  readonly station: string;
  readonly crew: string;
  /** S part of the sign-off; V with values; I own signature of an inspector not of the crew; T test. */
  readonly entry: 'S' | 'V' | 'I' | 'T';
  readonly scope: 'section' | 'home';
  /** Past tense, as the floor speaks: "Walls framed". */
  readonly name: Words;
  readonly requires: readonly Edge[];
  readonly expects: readonly string[];
  readonly hides: readonly Hide[];
  readonly values: readonly PlannedValue[];
  readonly photo: 'always' | 'sample' | 'gauge' | 'none';
  readonly instrument: string | null;
  readonly lots: readonly string[];
  /** Kinds of lot approved in place of those it uses. */
  readonly substitutes?: { readonly [kind: string]: readonly string[] };
  readonly caution: Words | null;
  /** An open hold stops the section here. */
  readonly gate: boolean;
  /** Affixes the certification label: takes a label number. */
  readonly label: boolean;
  /** Roles that may sign. Empty: whoever may record at all. */
  readonly signers: readonly string[];
  /** For the owner's build book. */
  readonly plain: Words | null;
  /** How long after others it may come. */
  readonly times?: readonly TimeRule[];
  /** Where the approved manual describes it. */
  readonly manual?: string;
  /** Drawings it is built to, by number. */
  readonly drawings?: readonly string[];
};

export type PlannedStation = {
  readonly id: string;
  /** Order along the line; null for stations off the line. */
  readonly pos: number | null;
  readonly kind: 'line' | 'shop' | 'yard' | 'site';
  readonly name: Words;
  readonly lanes: readonly string[];
};

export type DesignValue = string;
/** Design attributes of one section, role included: `{stud: '2x6', wind: 'I'}`. Numbers are decimal strings. */
export type Design = { readonly [attribute: string]: DesignValue };

export type CompiledPlan = {
  readonly revision: number;
  /** SHA-256 of the canonical JSON of all but this field, each operation stood in for by the SHA-256 of its own. */
  readonly digest: string;
  readonly design: Design;
  readonly stations: readonly PlannedStation[];
  readonly places: readonly { readonly id: string; readonly name: Words }[];
  /** Operations in working order. */
  readonly order: readonly string[];
  readonly operations: { readonly [id: string]: PlannedOperation };
  /** False for a rulebook made from a log: nothing is required of the order. */
  readonly enforced: boolean;
};
