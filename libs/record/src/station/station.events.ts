import type { Recorded } from '@libs/kernel';

export type StationEvent = LotMounted | LotUnmounted;

/** Opened at the station: every section worked there inherits it until the next of its kind is mounted. */
export type LotMounted = {
  readonly type: 'LotMounted';
  readonly data: {
    readonly station: string;
    readonly lot: string;
    readonly kind: string;
    /** The lot it takes the place of. */
    readonly replaces: string | null;
    /** Quarantined or out of date when mounted. */
    readonly usable: boolean;
  };
};
export type LotUnmounted = {
  readonly type: 'LotUnmounted';
  readonly data: { readonly station: string; readonly lot: string; readonly kind: string };
};
export type RecordedStationEvent = Recorded<StationEvent>;
