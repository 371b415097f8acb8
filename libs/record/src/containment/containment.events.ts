import type { Recorded } from '@libs/kernel';

/** One failure, and the other sections still in the plant that may share it (24 CFR 3282.362(a)(1)(v)). */
export type ContainmentEvent = ContainmentOpened | ContainedInspected;

/** By which what the records say may be shared. */
export type Shared = 'crew' | 'shift' | 'lot' | 'instrument' | 'design' | 'span';

export type ContainmentOpened = {
  readonly type: 'ContainmentOpened';
  readonly data: {
    readonly containment: string;
    /** The section it was found on. */
    readonly serial: string;
    readonly defect: string | null;
    /** The claim it began with, where no defect was found in the plant. */
    readonly claim?: string;
    readonly operation: string;
    readonly by: readonly Shared[];
    readonly sections: readonly {
      readonly serial: string;
      readonly shares: readonly Shared[];
      /** The hold placed on it; null: it was not asked for. */
      readonly hold: string | null;
    }[];
    readonly note?: string;
  };
};
/** Somebody went and looked. */
export type ContainedInspected = {
  readonly type: 'ContainedInspected';
  readonly data: {
    readonly containment: string;
    readonly serial: string;
    /** The same was found there; its own defect says what. */
    readonly found: boolean;
    readonly defect: string | null;
    readonly note?: string;
  };
};
export type RecordedContainmentEvent = Recorded<ContainmentEvent>;
