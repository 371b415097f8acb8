import type { FindingClass, Grade, Source } from './plan';

/** Every rule that can speak. A new one needs words in both catalogues. */
export const RULES = [
  'cover-hides-unproven',
  'cover-hides-defect',
  'required-work-unproven',
  'expected-work-unproven',
  'value-out-of-limits',
  'value-missing',
  'value-of-wrong-kind',
  'relation-not-met',
  'too-soon-after',
  'too-long-after',
  'operation-not-planned',
  'operation-unknown',
  'worked-elsewhere',
  'signed-by-own-crew',
  'signer-not-qualified',
  'seen-after-cover',
  'recorded-under-cover',
  'photo-missing',
  'lot-missing',
  'lot-not-usable',
  'instrument-missing',
  'instrument-not-usable',
  'instrument-due-soon',
  'qualification-expired',
  'qualification-due-soon',
  'destination-outside-zones',
  'held',
  'defect-open',
  'left-with-open-work',
  'station-skipped',
  'shipped-already',
  'stage-not-seen',
  'test-not-recent',
] as const;
export type Rule = (typeof RULES)[number];

/** One thing the judge has to say of an entry: codes and values, never sentences. */
export type Finding = {
  readonly rule: Rule;
  readonly grade: Grade;
  readonly class: FindingClass;
  /** The operation that fell short, charged with the finding; never the one whose scan found it. */
  readonly operation: string;
  /** The station of the operation charged. */
  readonly station: string | null;
  /** The operation being judged, where it is another. */
  readonly entry?: string;
  readonly characteristic?: string;
  readonly required?: string;
  readonly recorded?: string;
  readonly unit?: string;
  /** Where, when not everywhere. */
  readonly places?: readonly string[];
  readonly hold?: string;
  readonly defect?: string;
  readonly source: Source;
};
