import type { Recorded } from '@libs/kernel';

export type StationEvent = LotMounted | LotUnmounted | StationHeld | StationReleased;

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
/** Nothing may be started there until it is released; work that is told is recorded all the same. */
export type StationHeld = {
  readonly type: 'StationHeld';
  readonly data: {
    readonly station: string;
    readonly hold: string;
    readonly reason: string;
    readonly note?: string;
  };
};
export type StationReleased = {
  readonly type: 'StationReleased';
  readonly data: { readonly station: string; readonly hold: string; readonly note?: string };
};
export type RecordedStationEvent = Recorded<StationEvent>;
