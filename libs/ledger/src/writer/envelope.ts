import { hash } from 'node:crypto';
import { canonicalJson, hasCanonicalForm } from '@libs/kernel';
import type { Envelope, Meta, NewEvent } from '@libs/kernel';
import { NotRecordable } from '../fault';
import type { Typed } from '../recorded';
import type { Written } from './log-store';

/** All schemas are at their first shape; a raised one is named here, beside the step from the old one. */
const SHAPE_VERSION = 1;

export type Place = {
  readonly ledger: string;
  readonly position: number;
  readonly stream: string;
  readonly version: number;
  readonly recordedAt: string;
  readonly keyIndex: number;
};

/** Members stand in the order RFC 8785 wants, so that writing them down needs no sorting. */
export const envelopeAt = (place: Place, meta: Meta, event: NewEvent): Envelope => ({
  actor: meta.actor,
  assurance: meta.assurance,
  ...(event.corrects === undefined ? undefined : { corrects: event.corrects }),
  data: event.data,
  device: meta.device,
  deviceSeq: meta.deviceSeq,
  key: meta.key,
  keyIndex: place.keyIndex,
  ledger: place.ledger,
  occurredAt: meta.occurredAt,
  planDigest: event.planDigest ?? null,
  position: place.position,
  recordedAt: place.recordedAt,
  revision: event.revision ?? null,
  schema: `${event.type}/${SHAPE_VERSION}`,
  skewMs: meta.skewMs,
  station: meta.station,
  stream: place.stream,
  version: place.version,
  via: meta.via,
});

/** What was decided, as evolve takes it, without splitting the schema's name again. */
export const typedAs = (envelope: Envelope, type: string): Typed => ({ ...envelope, type });

/** Events are JSON: what RFC 8785 cannot write down is refused before anything of its asking is staged. */
export const assertRecordable = (envelope: Envelope): void => {
  if (hasCanonicalForm(envelope)) return;
  throw new NotRecordable(envelope.schema, 'a number is not finite, or text holds half of a surrogate pair');
};

export const written = (envelope: Envelope): Written => {
  const body = canonicalJson(envelope);
  return { envelope, body, leaf: leafOf(body) };
};

/** RFC 9162 leaf: SHA-256 of 0x00 and the bytes. */
export const leafOf = (body: string): Buffer => hash('sha256', `\u0000${body}`, 'buffer');
