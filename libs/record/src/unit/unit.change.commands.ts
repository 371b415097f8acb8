import type { Design, Deviation, Proof } from '@libs/judge';

type Command<T extends string, D> = { readonly type: T; readonly data: D };

/** What changes for a unit that is ordered or built already, and what has to be looked at again. `note` is sealed. */
export type UnitChangeCommand =
  ChangeOrder | ApproveDeviation | MindDestination | HoldForLot | FreeFromLot | RecheckHolds;

/** The order changed: from here on the unit is judged by another design. */
export type ChangeOrder = Command<
  'ChangeOrder',
  { readonly serial: string; readonly design: Design; readonly note?: string }
>;
export type ApproveDeviation = Command<
  'ApproveDeviation',
  { readonly serial: string; readonly deviation: Deviation; readonly note?: string }
>;
/** The home goes elsewhere, or its zones were told: holds for it are placed and released. */
export type MindDestination = Command<'MindDestination', { readonly serial: string }>;
/** A lot that is built in has been quarantined. */
export type HoldForLot = Command<'HoldForLot', { readonly serial: string; readonly lot: string }>;
export type FreeFromLot = Command<'FreeFromLot', { readonly serial: string; readonly lot: string }>;
/** Work on a section was recorded: what the home's own record missed of it may be made good. */
export type RecheckHolds = Command<
  'RecheckHolds',
  { readonly serial: string; readonly operation: string; readonly proof: Proof }
>;
