import type {
  CompiledPlan,
  DoneWork,
  Finding,
  Signer,
  UsedInstrument,
  WorkedLot,
  WorkState,
} from '@libs/judge';
import type { Evidence } from './unit.state';

/** The codes of the rulebook a unit is judged by. A kind of which the rulebook lists none takes any code. */
export type Codes = {
  readonly operations: ReadonlySet<string>;
  readonly stations: ReadonlySet<string>;
  readonly places: ReadonlySet<string>;
  readonly components: ReadonlySet<string>;
  readonly symptoms: ReadonlySet<string>;
  readonly reasons: ReadonlySet<string>;
  /** The likeliest cause the fault map names for a defect, among the operations of this unit's plan. */
  readonly likelyCause: (component: string, symptom: string, plan: CompiledPlan) => string | null;
};

export type MountedLot = { readonly station: string; readonly lot: WorkedLot };

/** An entry on another serial that belongs here: all of it is taken over, except who moves it. */
export type MovedEntry = { readonly done: DoneWork; readonly evidence: Evidence };

/** The plant as the decision found it: read inside the writer, never looked up from inside a decision. */
export type UnitFacts = {
  /** Null until the home has entered the line. */
  readonly plan: CompiledPlan | null;
  /** Null while the plant has no rulebook. */
  readonly codes: Codes | null;
  /** The revision a home that starts now is judged by; null: none is in force. */
  readonly revisionInForce: number | null;
  /** For a section: the revision its home has started with. */
  readonly homeRevision: number | null;
  readonly signer: Signer;
  /** What ids of defects and holds opened by this very command begin with. */
  readonly idBase: string;
  readonly occurredAt: string;
  readonly receivedAt: string;
  /** Device clock minus ours, milliseconds. */
  readonly skewMs: number;
  /** Where it was really done. */
  readonly station: string | null;
  /** Lots mounted where the work was done and at the stations of its operations. */
  readonly mounted: readonly MountedLot[];
  /** Lots named in the command, as far as they are known. */
  readonly scanned: readonly WorkedLot[];
  /** The instrument named in the command; null: none is named, or it is unknown. */
  readonly instrument: UsedInstrument | null;
  /** For a home: what its sections have proven, and what is open on them. */
  readonly ofSections: WorkState | null;
  /** For work moved from a wrong serial: the entry as it stands there; null: there is none. */
  readonly moved: MovedEntry | null;
  /** For a label: stages of this home the inspection agency has seen, on whichever of its sections. */
  readonly agencySaw: readonly string[];
  /** For a label: what stands in the unit's evidence and may not be used today. */
  readonly unusable: readonly UnusablePart[];
  /** Of the stations in question, those that are held. */
  readonly heldStations: readonly HeldStation[];
  /** The plan of another revision the unit is to be judged by; absent: none is asked for, or it is not in force. */
  readonly applying?: Applying;
  /** What speaks against the county the home is bound for; absent: not asked, or nowhere yet. */
  readonly outsideZones?: readonly Finding[];
};

/** Another plan, and what lots and instruments say that were used so far. */
export type Applying = {
  readonly plan: CompiledPlan;
  readonly lot: (id: string) => WorkedLot | null;
  readonly instrument: (id: string) => UsedInstrument | null;
};

/** A lot built in, or an instrument measured with, that has since been found unfit. */
export type UnusablePart = {
  readonly operation: string;
  readonly rule: 'lot-not-usable' | 'instrument-not-usable';
  readonly kind: string;
  readonly id: string;
};
export type HeldStation = { readonly station: string; readonly hold: string; readonly reason: string };
