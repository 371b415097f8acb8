import type { AnswerOf } from '@libs/contracts';
import type { Days, PassageFilter } from '@libs/views';
import type { OpenAlarm } from '../alarms';
import type { AuditSample, SampleWish } from '../audit/sample';
import type { Span } from '../told';

/** Questions; undefined: nothing is known under that serial. */
export type Questions = {
  readonly plant: () => Promise<AnswerOf<'plant'>>;
  readonly line: (stages: readonly string[]) => Promise<AnswerOf<'line'>>;
  readonly section: (serial: string, at: string | null) => Promise<AnswerOf<'section'> | undefined>;
  /** Undefined: no such station. */
  readonly kit: (station: string) => Promise<AnswerOf<'kit'> | undefined>;
  /** Null: too few homes were labelled on these days. */
  readonly auditSample: (wish: SampleWish) => Promise<AuditSample | null>;
  readonly homes: (search: string, most?: number) => Promise<AnswerOf<'homes'>>;
  /** By the home's serial or any of its sections'. */
  readonly history: (serial: string) => Promise<AnswerOf<'history'> | undefined>;
  readonly yieldByStation: (span: Span, filter?: PassageFilter, against?: Days) => Promise<AnswerOf<'yield'>>;
  readonly yieldTrend: (station: string, span: Span) => Promise<AnswerOf<'yieldTrend'>>;
  readonly signals: (span: Span) => Promise<AnswerOf<'signals'>>;
  /** Claims up to an age in days since occupancy. */
  readonly field: (age: number) => Promise<AnswerOf<'field'>>;
  /** Alarms without a cause yet. */
  readonly openAlarms: () => Promise<readonly OpenAlarm[]>;
  /** One page a station, as a PDF, up to a day; null: the last on record. */
  readonly weeklyReport: (
    upTo: string | null,
    language: 'en' | 'es',
  ) => Promise<{ readonly to: string; readonly bytes: Uint8Array }>;
  readonly stationChart: (station: string, span: Span) => Promise<AnswerOf<'stationChart'>>;
  readonly passages: (
    station: string,
    which: string,
    span: Span,
    filter?: PassageFilter,
  ) => Promise<AnswerOf<'passages'>>;
  readonly defectCounts: (
    by: string,
    only: { readonly station: string | null; readonly class: string; readonly weigh?: string },
    span: Span,
  ) => Promise<AnswerOf<'defectCounts'>>;
  readonly defects: (
    only: { readonly [filter: string]: string | null },
    span: Span,
  ) => Promise<AnswerOf<'defects'>>;
  readonly openDefects: (ofClass: string | null) => Promise<AnswerOf<'openDefects'>>;
  readonly holds: () => Promise<AnswerOf<'holds'>>;
  readonly agency: () => Promise<AnswerOf<'agency'>>;
  /** Of a month, `2026-03`. */
  readonly agencyReport: (month: string) => Promise<AnswerOf<'agencyReport'>>;
  readonly releases: () => Promise<AnswerOf<'releases'>>;
  readonly sectionRelease: (serial: string) => Promise<AnswerOf<'sectionRelease'> | undefined>;
  readonly labelLog: () => Promise<AnswerOf<'labelLog'>>;
  readonly dataPlate: (serial: string) => Promise<AnswerOf<'dataPlate'> | undefined>;
  /** `span`: instants; the operation done between them is shared too. */
  readonly sharing: (
    serial: string,
    operation: string,
    span: Span,
  ) => Promise<AnswerOf<'sharing'> | undefined>;
  readonly containments: () => Promise<AnswerOf<'containments'>>;
  readonly site: () => Promise<AnswerOf<'site'>>;
  /** For links; whoever answers says until when. Without the defects where they are not to be shown. */
  readonly buildBook: (
    home: string,
    withDefects: boolean,
  ) => Promise<Omit<AnswerOf<'linkBook'>, 'until'> | undefined>;
  readonly siteWork: (home: string) => Promise<Omit<AnswerOf<'linkSite'>, 'until'> | undefined>;
  readonly claims: () => Promise<AnswerOf<'claims'>>;
  readonly claim: (claim: string) => Promise<AnswerOf<'claim'> | undefined>;
  readonly trace: (claim: string) => Promise<AnswerOf<'trace'> | undefined>;
  /** The homes that share a cause of a claim's trace, by the cause's key. */
  readonly exposure: (
    claim: string,
    cause: string,
    method: 'exact' | 'whole-group',
  ) => Promise<AnswerOf<'exposure'> | undefined>;
  readonly determinations: () => Promise<AnswerOf<'determinations'>>;
  readonly determination: (determination: string) => Promise<AnswerOf<'determination'> | undefined>;
  /** A calendar feed (RFC 5545). */
  readonly dueDays: () => Promise<string>;
  readonly equipment: () => Promise<AnswerOf<'equipment'>>;
  readonly instrumentReach: (instrument: string) => Promise<AnswerOf<'instrumentReach'> | undefined>;
  readonly lotReach: (lot: string) => Promise<AnswerOf<'lotReach'> | undefined>;
};
