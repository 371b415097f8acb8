import type { RecordedValue } from '@libs/judge';

export type Lot = {
  readonly kind: string | null;
  readonly properties: readonly RecordedValue[];
  readonly usableUntil: string | null;
  readonly quarantined: boolean;
};

export const unknownLot: Lot = { kind: null, properties: [], usableUntil: null, quarantined: false };

/** Usable on a day: not quarantined, and not past its last day of use. Days compare as text. */
export const isUsableLot = ({ quarantined, usableUntil }: Lot, day: string): boolean =>
  !quarantined && (usableUntil === null || day <= usableUntil);
