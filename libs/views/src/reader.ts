import type { FindingClass } from '@libs/judge';
import type { SectionCard } from './section-card/section-card';

/** From and to are days of the floor, `2026-03-02`, both included. */
export type Days = { readonly from: string; readonly to: string };

/** Sums over the sections that left a station. */
export type YieldSums = {
  readonly left: number;
  readonly clean: number;
  readonly cleanWithEscapes: number;
  readonly complete: number;
  readonly mended: number;
  readonly nonconformances: number;
  readonly punch: number;
  readonly shortages: number;
  readonly records: number;
};

/** Which passages count: all of these that are given, together. */
export type PassageFilter = {
  readonly model?: string;
  /** Recorded work on the section at the station. */
  readonly crew?: string;
  /** An attribute of the design with its value. */
  readonly attribute?: string;
  readonly value?: string;
  /** Left between these times of the day, `06:00`, the first included; backwards: over midnight. */
  readonly leftFrom?: string;
  readonly leftTo?: string;
};

export type StationDay = {
  readonly station: string;
  readonly day: string;
  readonly left: number;
  readonly clean: number;
};

/** Where a nonconformance charged to a station was found, and when. */
export type FoundRow = {
  readonly foundAt: string | null;
  readonly occurredAt: string;
  /** When its section left the station it is charged to; null while it is there. */
  readonly leftAt: string | null;
};

export type PassageRow = {
  readonly serial: string;
  readonly home: string;
  readonly station: string;
  readonly enteredAt: string;
  readonly leftAt: string | null;
  readonly clean: boolean;
  readonly cleanWithEscapes: boolean;
  readonly complete: boolean;
  readonly nonconformances: number;
};

/** `escaped`: clean as seen when they left, and not with what was found later. */
export const PASSAGES = ['left', 'nonconforming', 'escaped', 'incomplete'] as const;
export type WhichPassages = (typeof PASSAGES)[number];

export type DefectRow = {
  readonly defect: string;
  readonly serial: string;
  readonly home: string;
  readonly class: FindingClass;
  readonly component: string;
  readonly symptom: string;
  readonly characteristic: string | null;
  readonly place: string | null;
  readonly foundAt: string | null;
  readonly operation: string | null;
  readonly charged: string | null;
  readonly state: 'open' | 'reworked' | 'closed';
  readonly escaped: boolean;
  readonly occurredAt: string;
  readonly recordedAt: string;
};

export type FullDefectRow = DefectRow & {
  readonly severity: 'minor' | 'major' | 'critical' | null;
  readonly disposition: 'rework' | 'repair' | 'use-as-is' | 'scrap' | null;
  readonly agency: boolean;
};

export const DEFECTS_BY = ['code', 'component', 'symptom', 'station', 'operation', 'crew', 'lot'] as const;
export type DefectsBy = (typeof DEFECTS_BY)[number];

/** What is counted: component and symptom where it is the code; empty names stand for what is not known. */
export type DefectTally = {
  readonly component: string;
  readonly symptom: string;
  readonly station: string;
  readonly operation: string;
  readonly crew: string;
  readonly lot: string;
  readonly count: number;
};

export type DefectFilter = {
  readonly station?: string | null;
  readonly serial?: string | null;
  readonly component?: string | null;
  readonly symptom?: string | null;
  readonly operation?: string | null;
  readonly crew?: string | null;
  readonly lot?: string | null;
  readonly class?: string | null;
};

/** What the views can be asked. No question reads the log, so none gets slower as it grows. */
export type ViewReader = {
  readonly cards: (stages: readonly string[]) => Promise<readonly SectionCard[]>;
  /** Cards of homes and their sections, of homes one of whose cards has this in a serial, model or label number. */
  readonly homesLike: (search: string, limit: number) => Promise<readonly SectionCard[]>;
  /** How many homes a search finds in all. */
  readonly homesLikeCount: (search: string) => Promise<number>;
  readonly yieldByStation: (days: Days) => Promise<ReadonlyMap<string, YieldSums>>;
  readonly yieldByDay: (station: string, days: Days) => Promise<ReadonlyMap<string, YieldSums>>;
  /** Of each station and day of the span. */
  readonly yieldByStationDay: (days: Days) => Promise<readonly StationDay[]>;
  /** Of each station, the sections that left it, in that order: `0` one with a nonconformance charged by then, else `1`. */
  readonly runs: (station: string | null, days: Days) => Promise<ReadonlyMap<string, string>>;
  /** Nonconformances charged to a station, by when its section had left. */
  readonly found: (station: string, days: Days) => Promise<readonly FoundRow[]>;
  /** The same sums from the passages of the span themselves, where only some are to count. */
  readonly yieldOf: (days: Days, filter: PassageFilter) => Promise<ReadonlyMap<string, YieldSums>>;
  /** Models among the sections that left a station. */
  readonly models: (station: string, days: Days) => Promise<readonly string[]>;
  readonly passages: (
    asked: { readonly station: string; readonly which: WhichPassages; readonly filter: PassageFilter },
    days: Days,
    limit: number,
  ) => Promise<readonly PassageRow[]>;
  readonly defectTallies: (
    by: DefectsBy,
    only: { readonly station: string | null; readonly class: string; readonly byCode?: boolean },
    days: Days,
  ) => Promise<readonly DefectTally[]>;
  /** Cards of sections and homes that something holds. */
  readonly heldCards: () => Promise<readonly SectionCard[]>;
  /** Of one home and its sections. */
  readonly cardsOfHome: (home: string) => Promise<readonly SectionCard[]>;
  /** Sections whose first label went on within these days. */
  readonly labelledBetween: (days: Days) => Promise<readonly SectionCard[]>;
  /** Open, or reworked and not verified; the oldest first. */
  readonly openDefects: (ofClass: string | null, limit: number) => Promise<readonly FullDefectRow[]>;
  /** Found by the inspection agency within these days, the latest first. */
  readonly agencyDefects: (days: Days) => Promise<readonly FullDefectRow[]>;
  /** Latest first. */
  readonly defects: (only: DefectFilter, days: Days, limit: number) => Promise<readonly DefectRow[]>;
  /** The last day anything was counted on; null: nothing was yet. */
  readonly lastDay: () => Promise<string | null>;
};
