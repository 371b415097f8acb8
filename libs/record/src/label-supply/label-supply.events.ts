import type { Recorded } from '@libs/kernel';

/** What the agency gave out, two to four weeks' worth at a time (24 CFR 3282.362(c)(2)). */
export type LabelSupplyEvent = LabelsReceived;
export type LabelsReceived = {
  readonly type: 'LabelsReceived';
  readonly data: {
    /** Three letters and six digits, without spaces. */
    readonly first: string;
    readonly last: string;
    readonly count: number;
  };
};
export type RecordedLabelSupplyEvent = Recorded<LabelSupplyEvent>;
