import type { RecordedValue } from '@libs/judge';
import type { Recorded } from '@libs/kernel';

export type InstrumentEvent = InstrumentCalibrated;

/** First calibration on record enrolls it. */
export type InstrumentCalibrated = {
  readonly type: 'InstrumentCalibrated';
  readonly data: {
    readonly instrument: string;
    readonly kind: string;
    readonly properties: readonly RecordedValue[];
    /** Last day it may be used, `2026-05-01`; null: needs no calibration. */
    readonly dueOn: string | null;
    readonly inTolerance: boolean;
  };
};
export type RecordedInstrumentEvent = Recorded<InstrumentEvent>;
