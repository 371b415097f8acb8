import type { Envelope } from '@libs/kernel';
import { typed, typeOf } from '@libs/ledger';
import type { RecordedUnitEvent } from '@libs/record';

/** The events of sections and homes. What the ledger holds was valid when it was recorded. */
export const unitEventsOf = (envelopes: readonly Envelope[]): readonly RecordedUnitEvent[] =>
  envelopes.filter(({ stream }) => isOfUnit(stream)).map((envelope) => known(typed(envelope)));

/** The same, of a page that was read for this alone and may therefore be written on: a rebuild reads millions. */
export const unitEventsIn = (page: readonly Envelope[]): readonly RecordedUnitEvent[] =>
  page
    .filter(({ stream }) => isOfUnit(stream))
    .map((envelope) => known(Object.assign(envelope, { type: typeOf(envelope.schema) })));

/** Says to the compiler what the stream's name has said already. */
const known = (event: unknown): RecordedUnitEvent => event as RecordedUnitEvent;

export const isOfUnit = (stream: string): boolean =>
  stream.startsWith('section/') || stream.startsWith('home/');

/** `section/25-1042-A` is of serial `25-1042-A`. */
export const serialOf = (stream: string): string => stream.slice(stream.indexOf('/') + 1);
