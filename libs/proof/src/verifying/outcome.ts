/** Where it is, as exactly as can be said. Lines are counted from 1. */
export type Place = {
  readonly file?: string;
  readonly line?: number;
  readonly stream?: string;
  readonly version?: number;
  readonly position?: number;
};

export const PROVEN = [
  'evidence-whole',
  'packet-whole',
  'packet-signed',
  'checkpoint-signed',
  'events-included',
  'stream-complete',
  'used-complete',
  'home-complete',
  'photos-named',
  'ledger-gapless',
  'tiles-agree',
  'checkpoints-agree',
  'key-known',
  'checkpoint-extends',
] as const;

export const FAILED = [
  'packet-unreadable',
  'container-altered',
  'manifest-unreadable',
  'file-missing',
  'file-unlisted',
  'file-altered',
  'file-cut-short',
  'file-lengthened',
  'line-unreadable',
  'evidence-other',
  'seal-wrong',
  'key-unreadable',
  'key-foreign',
  'key-change-wrong',
  'checkpoint-unreadable',
  'checkpoint-other',
  'signature-wrong',
  'event-altered',
  'event-dropped',
  'event-added',
  'event-repeated',
  'event-swapped',
  'event-out-of-order',
  'event-foreign',
  'proof-missing',
  'proof-wrong',
  'head-missing',
  'head-wrong',
  'stream-missing',
  'count-wrong',
  'photo-other',
  'photo-unnamed',
  'held-unreadable',
  'held-of-another-ledger',
  'held-later',
  'held-unbridged',
  'held-contradicted',
  'row-altered',
  'row-misplaced',
  'row-added',
  'row-missing',
  'row-foreign',
  'version-missing',
  'tile-altered',
  'tile-contradicts',
  'checkpoint-altered',
  'checkpoint-contradicted',
  'checkpoint-beyond',
  'more-failures',
] as const;

/** What a packet alone cannot show, and what would. */
export const OPEN = [
  'key-unconfirmed',
  'later-unknown',
  'truth-not-shown',
  'packet-unsealed',
  'photos-elsewhere',
  'checkpoint-none',
  'checkpoint-kept-elsewhere',
  'beyond-checkpoint',
] as const;

export type ProvenCode = (typeof PROVEN)[number];
export type FailedCode = (typeof FAILED)[number];
export type OpenCode = (typeof OPEN)[number];

export type OutcomeValues = { readonly [name: string]: string | number };

/** One thing there is to say of a packet. Codes and values: words come from the catalogues. */
export type Outcome = {
  readonly is: 'proven' | 'failed' | 'open';
  readonly code: ProvenCode | FailedCode | OpenCode;
  readonly place: Place;
  readonly values: OutcomeValues;
};

export const proven = (code: ProvenCode, values: OutcomeValues = {}, place: Place = {}): Outcome => ({
  is: 'proven',
  code,
  place,
  values,
});

export const failed = (code: FailedCode, place: Place, values: OutcomeValues = {}): Outcome => ({
  is: 'failed',
  code,
  place,
  values,
});

export const open = (code: OpenCode, values: OutcomeValues = {}): Outcome => ({
  is: 'open',
  code,
  place: {},
  values,
});

/** All that can be proven by a packet is. What stays open is no failure: it is said, and what would settle it. */
export const allProven = (outcomes: readonly Outcome[]): boolean =>
  outcomes.some(({ is }) => is === 'proven') && outcomes.every(({ is }) => is !== 'failed');
