import { canonicalJson } from '@libs/kernel';
import type { Envelope } from '@libs/kernel';
import { createHash } from 'node:crypto';

/** RFC 9162 leaf: SHA-256 of 0x00 and the stored bytes, which are the RFC 8785 form of the envelope. */
export const leafHex = (event: Envelope): string =>
  createHash('sha256')
    .update('\u0000')
    .update(canonicalJson({ ...event }), 'utf8')
    .digest('hex');

/** UUIDv5 (RFC 9562, section 5.5) with the ledger's id for its namespace and the position for its name. */
export const eventId = (ledger: string, position: number): string => uuidOf(ledger, String(position));

/** The same for whatever else has a name within a ledger. */
export const uuidOf = (ledger: string, name: string): string => {
  const bytes = createHash('sha1')
    .update(Buffer.from(ledger.replaceAll('-', ''), 'hex'))
    .update(name, 'utf8')
    .digest()
    .subarray(0, 16);
  bytes.writeUInt8((bytes.readUInt8(6) & 0x0f) | 0x50, 6);
  bytes.writeUInt8((bytes.readUInt8(8) & 0x3f) | 0x80, 8);
  const hex = bytes.toString('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
};
