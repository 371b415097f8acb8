import type { CompiledPlan, Design, Deviation } from '@libs/judge';

/** A unit's stream: a section's, or a home's. */
export type UnitRef = { readonly kind: 'section' | 'home'; readonly serial: string };

/** What a decision wants to know besides the unit itself. */
export type Wanted = {
  readonly receivedAt: string;
  /** Of a sender that is enrolled nowhere. */
  readonly senderRoles: readonly string[];
  /** Differs between the parts of one asking, so that what they open has names of its own. */
  readonly part?: string;
  /** Operations that may use up lots: those of the command. */
  readonly operations?: (plan: CompiledPlan) => readonly string[];
  readonly lots?: readonly string[];
  readonly instrument?: string | null;
  /** Put right where it stands: the entry's own lots and instrument are what it is judged by. */
  readonly mends?: string;
  /** An entry that comes over from another serial. */
  readonly moves?: { readonly from: UnitRef; readonly operation: string };
  /** A label may go on: what the agency saw and what is built in matter. */
  readonly forLabel?: boolean;
  /** Another design, or what is approved beside it: what that changes is to be told. */
  readonly changesTo?: { readonly design?: Design; readonly deviations?: readonly Deviation[] };
  /** Whether the home may stand where it is bound: there, or where its order says. */
  readonly zones?: { readonly destination?: string };
  /** The operation an asking is about: a station that is held starts nothing. */
  readonly asks?: string;
};
