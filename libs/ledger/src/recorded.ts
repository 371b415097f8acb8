import type { Envelope } from '@libs/kernel';

/** An event as `evolve` and the views take it: the envelope, with the name of its type apart from its version. */
export type Typed = Envelope & { readonly type: string };

export const typed = (envelope: Envelope): Typed => ({ ...envelope, type: typeOf(envelope.schema) });

/** `WorkRecorded/1` is of type `WorkRecorded`. */
export const typeOf = (schema: string): string => schema.slice(0, schema.lastIndexOf('/'));

/** What this ledger wrote itself, and whose leaf vouches for it, is not validated again. */
export const envelopeOf = (body: string): Envelope => JSON.parse(body) as Envelope;
