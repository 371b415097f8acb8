import type { Design, Deviation, DoneWork, Finding, OpenHold, WorkState } from '@libs/judge';

/** What later decisions need to know of a unit, and no more. */
export type Unit = WorkState & {
  readonly kind: 'unknown' | 'section' | 'home';
  readonly serial: string;
  readonly home: string;
  readonly model: string;
  readonly design: Design;
  /** All sections of the home. */
  readonly sections: readonly string[];
  readonly stage: 'ordered' | 'on-line' | 'pulled' | 'shipped';
  /** The revision it is judged by; null until it enters the line. */
  readonly revision: number | null;
  readonly station: string | null;
  readonly since: string | null;
  readonly label: string | null;
  /** What a correction or a withdrawal needs to know of each operation's entry, beside the work itself. */
  readonly evidence: { readonly [operation: string]: Evidence };
  /** What opened a hold or defect that is open. Those placed by hand are not here. */
  readonly raised: { readonly [holdOrDefect: string]: Raised };
  /** Defects and holds that are over: a second closing is told from an unknown id. */
  readonly closed: readonly string[];
  /** Shops whose product is in the section by now. */
  readonly shopsLeft: readonly string[];
  /** The operation entered last: what is satisfied right after it was satisfied by it. */
  readonly lastEntry: string | null;
  /** Stages at which the inspection agency saw it. */
  readonly seen: readonly string[];
  /** Numbers of the red tags that are on; each is among the holds too. */
  readonly redTags: readonly string[];
  /** Laid open after the label was on: the hold, and what has to be proven again before it goes. */
  readonly laidOpen: readonly { readonly hold: string; readonly operations: readonly string[] }[];
  /** Lots of work that was laid open and is still there. What was torn out took its lots along. */
  readonly builtIn: readonly { readonly operation: string; readonly lot: string }[];
  readonly destination: string | null;
  /** Approved for this home alone, in the order they were approved. */
  readonly deviations: readonly Deviation[];
};

/** The finding, and the entry it was found in: its position. */
export type Raised = { readonly finding: Finding; readonly at: number | null };

export type Evidence = {
  readonly lots: readonly string[];
  readonly instrument: string | null;
  readonly photos: readonly string[];
  /** Holds this entry satisfied. They come back if it is withdrawn. */
  readonly satisfied: readonly { readonly hold: OpenHold; readonly finding: Finding }[];
  /** What stood before this entry, and stands again if it is withdrawn. */
  readonly before: { readonly done: DoneWork; readonly evidence: Evidence } | null;
};

export const unknownUnit: Unit = {
  kind: 'unknown',
  serial: '',
  home: '',
  model: '',
  design: {},
  sections: [],
  stage: 'ordered',
  revision: null,
  station: null,
  since: null,
  label: null,
  work: {},
  defects: [],
  holds: [],
  evidence: {},
  raised: {},
  closed: [],
  shopsLeft: [],
  lastEntry: null,
  seen: [],
  redTags: [],
  laidOpen: [],
  builtIn: [],
  destination: null,
  deviations: [],
};
