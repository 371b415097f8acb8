import type { RecordedValue } from '@libs/judge';

export type Instrument = {
  readonly kind: string | null;
  readonly properties: readonly RecordedValue[];
  readonly dueOn: string | null;
  readonly inTolerance: boolean;
};

export const unknownInstrument: Instrument = { kind: null, properties: [], dueOn: null, inTolerance: false };

/** Usable on a day: found in tolerance, and its calibration not run out. Days compare as text. */
export const isUsableInstrument = ({ inTolerance, dueOn }: Instrument, day: string): boolean =>
  inTolerance && (dueOn === null || day <= dueOn);
