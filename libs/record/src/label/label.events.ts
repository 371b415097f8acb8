import type { Recorded } from '@libs/kernel';

/** One stream a label number, so that none is used twice and each can be accounted for. */
export type LabelEvent = LabelUsed | LabelVoided | LabelReclaimed | LabelTakenOff;
export type LabelUsed = {
  readonly type: 'LabelUsed';
  readonly data: { readonly number: string; readonly serial: string; readonly replaces?: string };
};
/** Spoilt before it went on. */
export type LabelVoided = {
  readonly type: 'LabelVoided';
  readonly data: { readonly number: string; readonly reason: string; readonly note?: string };
};
/** Taken back by the agency that gave it out (24 CFR 3282.362(c)(2)). */
export type LabelReclaimed = {
  readonly type: 'LabelReclaimed';
  readonly data: { readonly number: string; readonly note?: string };
};
/** Damaged on the wall: another number is there in its place. */
export type LabelTakenOff = {
  readonly type: 'LabelTakenOff';
  readonly data: { readonly number: string; readonly serial: string; readonly replacedBy: string };
};
export type RecordedLabelEvent = Recorded<LabelEvent>;
