import type { RecordedValue } from '@libs/judge';
import type { Recorded } from '@libs/kernel';

export type LotEvent = LotReceived | LotQuarantined | LotReleased;

export type LotReceived = {
  readonly type: 'LotReceived';
  readonly data: {
    readonly lot: string;
    readonly kind: string;
    readonly maker: string | null;
    /** What its certificate says, by characteristic. */
    readonly properties: readonly RecordedValue[];
    /** Last day of use, `2026-05-01`; null: does not expire. */
    readonly usableUntil: string | null;
  };
};
export type LotQuarantined = {
  readonly type: 'LotQuarantined';
  readonly data: { readonly lot: string; readonly reason: string; readonly note?: string };
};
export type LotReleased = {
  readonly type: 'LotReleased';
  readonly data: { readonly lot: string; readonly note?: string };
};
export type RecordedLotEvent = Recorded<LotEvent>;
