import type { Recorded } from '@libs/kernel';

/** What the inspection agency's inspectors do that belongs to no section: one stream for the plant. */
export type AgencyEvent = VisitMade | ObservationMade | ObservationAnswered | ObservationClosed;

export type VisitMade = {
  readonly type: 'VisitMade';
  readonly data: {
    readonly visit: string;
    /** `2026-03-14`. */
    readonly day: string;
    /** Stations looked at; a visit covers every phase that is at work. */
    readonly stations: readonly string[];
    /** Materials in storage and test equipment were looked at too: due at least monthly (24 CFR 3282.362(c)(1)). */
    readonly storage: boolean;
    readonly equipment: boolean;
    readonly note?: string;
  };
};
/** A finding of the agency's that hangs on no section: of the manual, the storage, an instrument, a station. */
export type ObservationMade = {
  readonly type: 'ObservationMade';
  readonly data: {
    readonly observation: string;
    readonly about: ObservationSubject;
    /** The station, instrument or serial it is about. */
    readonly subject: string | null;
    /** The section of the design, the manual or the standard it cites. */
    readonly rule: string;
    /** The plant answers by this day. */
    readonly dueOn: string | null;
    /** What was found; sealed. */
    readonly note: string;
  };
};
export type ObservationSubject = 'manual' | 'storage' | 'instrument' | 'station' | 'section' | 'other';
/** The plant's answer. */
export type ObservationAnswered = {
  readonly type: 'ObservationAnswered';
  readonly data: { readonly observation: string; readonly note: string };
};
/** By the agency, who may also send it back: `accepted` false asks for another answer. */
export type ObservationClosed = {
  readonly type: 'ObservationClosed';
  readonly data: {
    readonly observation: string;
    readonly accepted: boolean;
    /** Not accepted: the new day. */
    readonly dueOn: string | null;
    readonly note?: string;
  };
};
export type RecordedAgencyEvent = Recorded<AgencyEvent>;
