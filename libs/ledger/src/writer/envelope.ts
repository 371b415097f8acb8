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

/**
 * Members stand in the order RFC 8785 wants, so that writing them down needs no sorting. Two literals rather than
 * one with a spread in it: this runs for every event, and engines build a plain literal several times faster.
 */
export const envelopeAt = (place: Place, meta: Meta, event: NewEvent): Envelope =>
  event.corrects === undefined && meta.signature === undefined
    ? {
        actor: meta.actor,
        assurance: meta.assurance,
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
      }
    : withMore(place, meta, event);

/** An entry that mends another, or one that was signed by hand: few are. */
const withMore = (place: Place, meta: Meta, event: NewEvent): Envelope => {
  const { corrects, ...plain } = event;
  const { signature, ...unsigned } = meta;
  const { actor, assurance, ...rest } = envelopeAt(place, unsigned, plain);
  return {
    actor,
    assurance,
    ...(corrects === undefined ? {} : { corrects }),
    ...rest,
    ...(signature === undefined ? {} : { signature }),
  };
};

/** What was decided, as evolve takes it, without splitting the schema's name again. */
export const typedAs = (envelope: Envelope, type: string): Typed => ({ ...envelope, type });

/** Events are JSON: what RFC 8785 cannot write down is refused before anything of its asking is staged. */
export const assertRecordable = (envelope: Envelope): void => {
  if (hasCanonicalForm(envelope)) return;
  throw new NotRecordable(envelope.schema, 'a number is not finite, or text holds half of a surrogate pair');
};

/**
 * A batch as it is stored. The texts lie in one block, each behind the byte 0x00 that its leaf is hashed with, so
 * that every text is turned into bytes once for both.
 */
export const written = (envelopes: readonly Envelope[]): Written => {
  const bodies = envelopes.map(canonicalJson);
  const lengths = bodies.map((body) => Buffer.byteLength(body));
  const block = Buffer.allocUnsafe(lengths.reduce((sum, length) => sum + length + 1, 0));
  const leaves = Buffer.allocUnsafe(envelopes.length * LEAF_BYTES);

  const starts: number[] = [];
  let at = 0;
  for (const [index, body] of bodies.entries()) {
    block[at] = LEAF_PREFIX;
    const end = at + 1 + block.write(body, at + 1);
    hash('sha256', block.subarray(at, end), 'buffer').copy(leaves, index * LEAF_BYTES);
    starts.push(at + 1);
    at = end;
  }
  return { envelopes, bodies, block, starts, lengths, leaves };
};

const LEAF_PREFIX = 0;
export const LEAF_BYTES = 32;

/** RFC 9162 leaf: SHA-256 of 0x00 and the bytes. */
export const leafOf = (body: string): Buffer => hash('sha256', `\u0000${body}`, 'buffer');
