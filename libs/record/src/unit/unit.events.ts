import type { Design, Finding, FindingClass, Proof, RecordedValue } from '@libs/judge';
import type { Recorded } from '@libs/kernel';
import type { UnitChangeEvent } from './unit.change.events';
import type { UnitReleaseEvent } from './unit.release.events';
import type { RevisionApplied } from './unit.revision.events';

/**
 * What can have happened to a unit: a section on its way down the line, or a whole home at its site.
 * Streams `section/SERIAL` and `home/SERIAL`. Free text is sealed before it gets here.
 */
export type UnitEvent =
  | HomeOrdered
  | SectionOrdered
  | HomeStarted
  | SectionStarted
  | SectionMoved
  | SectionPulled
  | SectionReturned
  | SectionShipped
  | AskingCleared
  | AskingRefused
  | StationSignedOff
  | WorkRecorded
  | TestRecorded
  | WorkWithdrawn
  | WorkCorrected
  | DefectRecorded
  | ReworkDone
  | DefectVerified
  | DefectClosed
  | HoldPlaced
  | HoldReleased
  | LabelAffixed
  | RevisionApplied
  | UnitReleaseEvent
  | UnitChangeEvent;

type Event<T extends string, D> = {
  readonly type: T;
  readonly data: D;
  readonly revision?: number;
  readonly planDigest?: string;
  readonly corrects?: number;
};

export type HomeOrdered = Event<
  'HomeOrdered',
  {
    readonly home: string;
    readonly model: string;
    readonly design: Design;
    readonly sections: readonly string[];
    /** Destination county and state, codes; null when not sold yet. */
    readonly destination: string | null;
  }
>;
export type SectionOrdered = Event<
  'SectionOrdered',
  {
    readonly serial: string;
    readonly home: string;
    readonly model: string;
    /** The home's design with this section's own attributes (its role) added. */
    readonly design: Design;
    /** All sections of the home, this one included. */
    readonly sections: readonly string[];
  }
>;
/** The first of its sections entered the line: from here on the home is judged by this revision. */
export type HomeStarted = Event<'HomeStarted', { readonly home: string; readonly revision: number }>;
export type SectionStarted = Event<
  'SectionStarted',
  { readonly serial: string; readonly home: string; readonly at: string; readonly revision: number }
>;
export type SectionMoved = Event<
  'SectionMoved',
  {
    readonly serial: string;
    readonly from: string | null;
    readonly to: string;
    /** Operations of the station left (and earlier) still open, carried along. */
    readonly open: readonly string[];
    /** Defects of class shortage still open, carried along. */
    readonly shortages: readonly string[];
    /** Nothing of the station left is open, no shortage charged to it. */
    readonly complete: boolean;
    /**
     * Shops whose product is now in the section: this is the first line station with an operation that requires or
     * expects one of the shop's. A shop has no moves of its own, so the move that ends its passage tells of it.
     * `since`: first work of the shop on this section. Absent when there are none.
     */
    readonly shops?: readonly {
      readonly station: string;
      readonly since: string;
      readonly complete: boolean;
    }[];
    /** Line stations it went past without any work there, and what held it when it went. Absent when there is nothing. */
    readonly findings?: readonly Finding[];
  }
>;
export type SectionPulled = Event<
  'SectionPulled',
  { readonly serial: string; readonly from: string | null; readonly reason: string; readonly note?: string }
>;
export type SectionReturned = Event<'SectionReturned', { readonly serial: string; readonly to: string }>;
export type SectionShipped = Event<
  'SectionShipped',
  { readonly serial: string; readonly findings: readonly Finding[]; readonly note?: string }
>;

type Answered = {
  readonly serial: string;
  readonly operation: string;
  readonly except: readonly string[];
  readonly findings: readonly Finding[];
};
/** Asked "may I?" and cleared; notes may come with it. */
export type AskingCleared = Event<'AskingCleared', Answered>;
export type AskingRefused = Event<'AskingRefused', Answered>;

export type StationSignedOff = Event<
  'StationSignedOff',
  {
    readonly serial: string;
    readonly station: string;
    readonly operations: readonly string[];
    /** What the lead excepted: whole operations (no places) or places of them. */
    readonly except: readonly { readonly operation: string; readonly places: readonly string[] }[];
    readonly note?: string;
  }
>;

export type WorkData = {
  readonly serial: string;
  readonly operation: string;
  readonly proof: Proof;
  readonly except: readonly string[];
  readonly values: readonly RecordedValue[];
  /** Lots inherited from the station and scanned, by number. */
  readonly lots: readonly string[];
  readonly instrument: string | null;
  readonly photos: readonly string[];
  /** The crew that did it; `actor` is who signed. */
  readonly crew: string | null;
  readonly findings: readonly Finding[];
  /** Characteristics asked for and not given. */
  readonly missing: readonly string[];
  /** Entered well after it happened. */
  readonly late: boolean;
  /** Put right after a wrong serial: where it was first recorded. */
  readonly movedFrom?: { readonly serial: string; readonly position: number };
  /** Who signed it there, where another person moved it; absent: the actor. */
  readonly signedBy?: string;
  readonly note?: string;
};
export type WorkRecorded = Event<'WorkRecorded', WorkData>;
/** A test, with its own signature. `passed`: no finding above a note. */
export type TestRecorded = Event<'TestRecorded', WorkData & { readonly passed: boolean }>;
/** Recorded on this serial by mistake (`corrects` its position). */
export type WorkWithdrawn = Event<
  'WorkWithdrawn',
  {
    readonly serial: string;
    readonly operation: string;
    readonly reason: string;
    readonly movedTo: string | null;
    /** Holds and defects the mistaken entry had opened, withdrawn with it. */
    readonly holds: readonly string[];
    readonly defects: readonly string[];
    readonly note?: string;
  }
>;
/** The values of an earlier entry were written down wrong (`corrects` its position). */
export type WorkCorrected = Event<'WorkCorrected', WorkData & { readonly reason: string }>;

export type DefectRecorded = Event<
  'DefectRecorded',
  {
    readonly serial: string;
    readonly defect: string;
    readonly class: FindingClass;
    readonly component: string;
    readonly symptom: string;
    readonly place: string | null;
    /** Station where it was found; null: in the field. */
    readonly foundAt: string | null;
    /** The operation that caused it and its station, which is charged. */
    readonly operation: string | null;
    readonly charged: string | null;
    /** The crew that did the operation, as on record when the defect was; absent when nobody knows. */
    readonly madeBy?: string;
    /** Opened by a rule on this finding, not by a person. */
    readonly finding?: Finding;
    readonly photos: readonly string[];
    readonly quantity: number;
    /** As judged when it was found; absent: nobody said. */
    readonly severity?: Severity;
    /** The cause the operation graph and the fault map proposed, where a person chose another. */
    readonly proposed?: string;
    /** Found by the inspection agency. */
    readonly agency?: true;
    readonly note?: string;
  }
>;
/** How grave a nonconformity is, in the terms sampling inspection has long used (ISO 2859-1 leaves them to the plant). */
export type Severity = 'minor' | 'major' | 'critical';
export type ReworkDone = Event<
  'ReworkDone',
  { readonly serial: string; readonly defect: string; readonly crew: string | null; readonly note?: string }
>;
/** By someone who did not do the rework. `accepted` false opens it again. */
export type DefectVerified = Event<
  'DefectVerified',
  { readonly serial: string; readonly defect: string; readonly accepted: boolean; readonly note?: string }
>;
/** A punch item signed, a shortage fitted, a record made good, a deviation accepted: no rework needed. */
export type DefectClosed = Event<
  'DefectClosed',
  {
    readonly serial: string;
    readonly defect: string;
    readonly how: 'fitted' | 'signed' | 'withdrawn' | 'accepted';
  }
>;

export type HoldPlaced = Event<
  'HoldPlaced',
  {
    readonly serial: string;
    readonly hold: string;
    /** A rule's code, or the plant's own reason code when placed by hand. */
    readonly reason: string;
    readonly operation: string | null;
    readonly characteristic: string | null;
    readonly defect: string | null;
    readonly finding?: Finding;
    /** Placed to contain what was found on another section. */
    readonly containment?: string;
    readonly note?: string;
  }
>;
export type HoldReleased = Event<
  'HoldReleased',
  {
    readonly serial: string;
    readonly hold: string;
    /** `satisfied`: what was missing was recorded; `verified`: the defect behind it was; `decided`: by a person. */
    readonly how: 'satisfied' | 'verified' | 'decided' | 'withdrawn';
    readonly note?: string;
  }
>;
export type LabelAffixed = Event<'LabelAffixed', { readonly serial: string; readonly number: string }>;

export type RecordedUnitEvent = Recorded<UnitEvent>;
