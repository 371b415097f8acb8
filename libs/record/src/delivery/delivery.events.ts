import type { Recorded } from '@libs/kernel';

export type DeliveryEvent = DeliveryRecorded;

/** Who hauled, set and sold a home, and since when somebody lives in it. The last one told counts. */
export type DeliveryRecorded = {
  readonly type: 'DeliveryRecorded';
  readonly data: {
    readonly home: string;
    readonly retailer: string | null;
    readonly hauler: string | null;
    readonly installer: string | null;
    /** Days, `2026-03-14`. */
    readonly setOn: string | null;
    readonly occupiedOn: string | null;
    /** Where it stands, and whom to write to; sealed. */
    readonly address?: string;
  };
};
export type RecordedDeliveryEvent = Recorded<DeliveryEvent>;
