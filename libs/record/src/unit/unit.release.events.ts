import type { Finding } from '@libs/judge';

type Event<T extends string, D> = {
  readonly type: T;
  readonly data: D;
  readonly revision?: number;
  readonly planDigest?: string;
  readonly corrects?: number;
};

/** What becomes of a nonconformance, what is opened up for it, and what lets a section go. */
export type UnitReleaseEvent =
  | CauseRevised
  | PunchListSigned
  | DefectDispositioned
  | CoverOpened
  | StageSeen
  | RedTagPlaced
  | RedTagLifted
  | LabelRefused
  | LabelReplaced
  | DestinationSet;

/** The quality manager names another cause: from here on its station is charged. */
export type CauseRevised = Event<
  'CauseRevised',
  {
    readonly serial: string;
    readonly defect: string;
    /** The cause until now; null: none was named, or the defect was over already. */
    readonly from: string | null;
    readonly operation: string | null;
    readonly charged: string | null;
    readonly madeBy?: string;
    /** Why; sealed. */
    readonly note: string;
  }
>;
/** One signature for a list of touch-up items; each is closed by an event of its own beside it. */
export type PunchListSigned = Event<
  'PunchListSigned',
  {
    readonly serial: string;
    readonly defects: readonly string[];
    /** Items, quantities added up. */
    readonly items: number;
    readonly note?: string;
  }
>;
export type Disposition = 'rework' | 'repair' | 'use-as-is' | 'scrap';
/** What becomes of a nonconformance. `use-as-is` closes it; the others end with rework verified by someone else. */
export type DefectDispositioned = Event<
  'DefectDispositioned',
  {
    readonly serial: string;
    readonly defect: string;
    readonly disposition: Disposition;
    /** Repair: the approved detail it is done to, by its drawing or letter. */
    readonly detail: string | null;
    /** Use as is: who approved it, and with which letter; sealed. */
    readonly approval?: string;
    readonly note?: string;
  }
>;
/**
 * Covered work was laid open (drywall taken down). The cover, what was built on it and what it hid are due again,
 * at these places; no places: everywhere.
 */
export type CoverOpened = Event<
  'CoverOpened',
  {
    readonly serial: string;
    readonly operation: string;
    readonly places: readonly string[];
    /** The cover itself and what was built on it: gone. */
    readonly undone: readonly string[];
    /** What it hid: there, and to be proven anew before it is covered again. */
    readonly exposed: readonly string[];
    /** The defect it was opened for. */
    readonly defect: string | null;
    /** The label was on: held until all of it is proven again. */
    readonly hold: string | null;
    readonly note?: string;
  }
>;
/** The inspection agency's inspector saw this section at this stage (24 CFR 3282.362(c)(1)). */
export type StageSeen = Event<
  'StageSeen',
  { readonly serial: string; readonly station: string; readonly visit: string | null; readonly note?: string }
>;
/** Put on by the inspection agency, and taken off by nobody else. */
export type RedTagPlaced = Event<
  'RedTagPlaced',
  {
    readonly serial: string;
    /** The number on the tag. */
    readonly tag: string;
    readonly defect: string | null;
    /** The section of the design, the manual or the standard it cites. */
    readonly rule: string | null;
    readonly note?: string;
  }
>;
export type RedTagLifted = Event<
  'RedTagLifted',
  { readonly serial: string; readonly tag: string; readonly note?: string }
>;
/** A label was about to go on and something is missing: what, all of it. The number stays unused. */
export type LabelRefused = Event<
  'LabelRefused',
  { readonly serial: string; readonly number: string; readonly findings: readonly Finding[] }
>;
/** A damaged label, and the other number that takes its place (24 CFR 3282.362(c)(2)(i)(H)). */
export type LabelReplaced = Event<
  'LabelReplaced',
  {
    readonly serial: string;
    readonly number: string;
    readonly replaces: string;
    readonly reason: string;
    readonly note?: string;
  }
>;
/** Where the home goes, for the papers that travel with it. */
export type DestinationSet = Event<
  'DestinationSet',
  { readonly home: string; readonly destination: string; readonly note?: string }
>;
