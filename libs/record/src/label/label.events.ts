import type { Recorded } from '@libs/kernel';

/** One stream a label number, so that none is used twice. */
export type LabelEvent = LabelUsed;
export type LabelUsed = {
  readonly type: 'LabelUsed';
  readonly data: { readonly number: string; readonly serial: string };
};
export type RecordedLabelEvent = Recorded<LabelEvent>;
