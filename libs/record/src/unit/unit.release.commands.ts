import type { Disposition } from './unit.release.events';

type Command<T extends string, D> = { readonly type: T; readonly data: D };

/** What becomes of a nonconformance, what is opened up for it, and what lets a section go. `note` is sealed. */
export type UnitReleaseCommand =
  | ReviseCause
  | RecordPunchList
  | SignPunchList
  | DispositionDefect
  | OpenCover
  | SeeStage
  | PlaceRedTag
  | LiftRedTag
  | ReplaceLabel
  | SetDestination;

export type ReviseCause = Command<
  'ReviseCause',
  {
    readonly serial: string;
    readonly defect: string;
    readonly operation: string | null;
    readonly note: string;
  }
>;
export type PunchItem = {
  readonly component: string;
  readonly symptom: string;
  readonly place: string | null;
  readonly quantity: number;
};
/** A list of touch-up items as one walk round the section found them. Each gets an id of its own. */
export type RecordPunchList = Command<
  'RecordPunchList',
  { readonly serial: string; readonly foundAt: string | null; readonly items: readonly PunchItem[] }
>;
/** No ids: all that is open. */
export type SignPunchList = Command<
  'SignPunchList',
  { readonly serial: string; readonly defects: readonly string[]; readonly note?: string }
>;
export type DispositionDefect = Command<
  'DispositionDefect',
  {
    readonly serial: string;
    readonly defect: string;
    readonly disposition: Disposition;
    readonly detail: string | null;
    readonly approval?: string;
    readonly note?: string;
  }
>;
export type OpenCover = Command<
  'OpenCover',
  {
    readonly serial: string;
    readonly operation: string;
    readonly places: readonly string[];
    /** More work that went with the cover: paint, trim. */
    readonly also: readonly string[];
    readonly defect: string | null;
    readonly note?: string;
  }
>;
export type SeeStage = Command<
  'SeeStage',
  { readonly serial: string; readonly station: string; readonly visit: string | null; readonly note?: string }
>;
export type PlaceRedTag = Command<
  'PlaceRedTag',
  {
    readonly serial: string;
    readonly tag: string;
    readonly defect: string | null;
    readonly rule: string | null;
    readonly note?: string;
  }
>;
export type LiftRedTag = Command<
  'LiftRedTag',
  { readonly serial: string; readonly tag: string; readonly note?: string }
>;
export type ReplaceLabel = Command<
  'ReplaceLabel',
  {
    readonly serial: string;
    readonly number: string;
    readonly reason: string;
    readonly photos: readonly string[];
    readonly note?: string;
  }
>;
export type SetDestination = Command<
  'SetDestination',
  { readonly home: string; readonly destination: string; readonly note?: string }
>;
