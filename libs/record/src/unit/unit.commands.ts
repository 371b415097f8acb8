import type { Design, FindingClass, Proof, RecordedValue } from '@libs/judge';
import type { Severity } from './unit.events';
import type { UnitChangeCommand } from './unit.change.commands';
import type { UnitReleaseCommand } from './unit.release.commands';

/** What can be asked or told of a unit. `note` is sealed free text. */
export type UnitCommand =
  | OrderHome
  | OrderSection
  | StartHome
  | StartSection
  | MoveSection
  | PullSection
  | ReturnSection
  | ShipSection
  | Ask
  | SignOffStation
  | RecordWork
  | WithdrawWork
  | CorrectWork
  | RecordDefect
  | RecordRework
  | VerifyDefect
  | CloseDefect
  | PlaceHold
  | ReleaseHold
  | AffixLabel
  | ApplyRevision
  | UnitReleaseCommand
  | UnitChangeCommand;

type Command<T extends string, D> = { readonly type: T; readonly data: D };

export type OrderHome = Command<
  'OrderHome',
  {
    readonly home: string;
    readonly model: string;
    readonly design: Design;
    readonly sections: readonly string[];
    readonly destination: string | null;
  }
>;
export type OrderSection = Command<
  'OrderSection',
  {
    readonly serial: string;
    readonly home: string;
    readonly model: string;
    readonly design: Design;
    readonly sections: readonly string[];
  }
>;
/** Records nothing when the home is started already. */
export type StartHome = Command<'StartHome', { readonly home: string }>;
export type StartSection = Command<'StartSection', { readonly serial: string; readonly at: string }>;
export type MoveSection = Command<'MoveSection', { readonly serial: string; readonly to: string }>;
export type PullSection = Command<
  'PullSection',
  { readonly serial: string; readonly reason: string; readonly note?: string }
>;
export type ReturnSection = Command<'ReturnSection', { readonly serial: string; readonly to: string }>;
export type ShipSection = Command<'ShipSection', { readonly serial: string; readonly note?: string }>;
/** May I cover, start, test, label? */
export type Ask = Command<
  'Ask',
  { readonly serial: string; readonly operation: string; readonly except: readonly string[] }
>;
export type RecordWork = Command<
  'RecordWork',
  {
    readonly serial: string;
    readonly operation: string;
    readonly proof: Proof;
    readonly except: readonly string[];
    readonly values: readonly RecordedValue[];
    /** Scanned for this very section, beside those mounted at the station. */
    readonly lots: readonly string[];
    readonly instrument: string | null;
    readonly photos: readonly string[];
    readonly crew: string | null;
    readonly movedFrom?: { readonly serial: string; readonly position: number };
    readonly note?: string;
  }
>;
/** One sign-off for what the station owes this serial: "all as planned, except ...". */
export type SignOffStation = Command<
  'SignOffStation',
  {
    readonly serial: string;
    readonly station: string;
    readonly except: readonly { readonly operation: string; readonly places: readonly string[] }[];
    readonly values: readonly (RecordedValue & { readonly operation: string })[];
    readonly photos: readonly string[];
    readonly crew: string | null;
    readonly note?: string;
  }
>;
export type WithdrawWork = Command<
  'WithdrawWork',
  {
    readonly serial: string;
    readonly operation: string;
    readonly reason: string;
    readonly movedTo: string | null;
    readonly note?: string;
  }
>;
export type CorrectWork = Command<
  'CorrectWork',
  {
    readonly serial: string;
    readonly operation: string;
    readonly except: readonly string[];
    readonly values: readonly RecordedValue[];
    readonly reason: string;
    readonly note?: string;
  }
>;
export type RecordDefect = Command<
  'RecordDefect',
  {
    readonly serial: string;
    readonly defect: string;
    readonly class: FindingClass;
    readonly component: string;
    readonly symptom: string;
    readonly place: string | null;
    readonly foundAt: string | null;
    readonly operation: string | null;
    readonly photos: readonly string[];
    readonly quantity: number;
    /** Place a hold with it. */
    readonly hold: boolean;
    readonly severity?: Severity;
    readonly note?: string;
  }
>;
export type RecordRework = Command<
  'RecordRework',
  { readonly serial: string; readonly defect: string; readonly crew: string | null; readonly note?: string }
>;
export type VerifyDefect = Command<
  'VerifyDefect',
  { readonly serial: string; readonly defect: string; readonly accepted: boolean; readonly note?: string }
>;
export type CloseDefect = Command<
  'CloseDefect',
  { readonly serial: string; readonly defect: string; readonly how: 'fitted' | 'signed' | 'withdrawn' }
>;
export type PlaceHold = Command<
  'PlaceHold',
  {
    readonly serial: string;
    readonly hold: string;
    readonly reason: string;
    readonly operation: string | null;
    readonly containment?: string;
    readonly note?: string;
  }
>;
export type ReleaseHold = Command<
  'ReleaseHold',
  { readonly serial: string; readonly hold: string; readonly note?: string }
>;
export type AffixLabel = Command<
  'AffixLabel',
  { readonly serial: string; readonly number: string; readonly photos: readonly string[] }
>;
/** From here on the unit is judged by another revision. */
export type ApplyRevision = Command<
  'ApplyRevision',
  { readonly serial: string; readonly revision: number; readonly note?: string }
>;
