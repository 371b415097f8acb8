import { bytesOfBase64, textOf } from '../bytes';
import { HASH_BYTES } from '../hashing';
import type { HeadProof } from '../stream-heads';
import { EVIDENCE_FORMAT, PACKET_FORMAT } from './files';
import type { EvidenceManifest, ListedFile, PacketManifest } from './files';

/** Files from outside: nothing in them is taken for what it says before it has the form. */
type Fields = { readonly [name: string]: unknown };

export const readJson = (bytes: Uint8Array | string): Fields | undefined => {
  const text = typeof bytes === 'string' ? bytes : textOf(bytes);
  if (text === undefined) return undefined;
  try {
    const value: unknown = JSON.parse(text);
    return isFields(value) ? value : undefined;
  } catch {
    return undefined;
  }
};

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && Number(value) >= 0;
const isText = (value: unknown): value is string => typeof value === 'string';
const isTexts = (value: unknown): value is readonly string[] => Array.isArray(value) && value.every(isText);
const HEX_HASH = /^[0-9a-f]{64}$/;
const isHexHash = (value: unknown): value is string => isText(value) && HEX_HASH.test(value);

export const readEvidenceManifest = (bytes: Uint8Array): EvidenceManifest | undefined => {
  const fields = readJson(bytes) ?? {};
  const { format, ledger, home, position, streams, also, events } = fields;
  const files = readListed(fields['files']);
  if (format !== EVIDENCE_FORMAT || files === undefined || !isText(ledger) || !isText(home)) return undefined;
  if (!isCount(position) || !isCount(events) || !isTexts(streams) || !isTexts(also)) return undefined;
  return { format, ledger, home, position, streams, also, events, files };
};

export const readPacketManifest = (bytes: Uint8Array): PacketManifest | undefined => {
  const { format, evidence, files: given } = readJson(bytes) ?? {};
  const files = readListed(given);
  if (format !== PACKET_FORMAT || !isHexHash(evidence) || files === undefined) return undefined;
  return { format, evidence, files };
};

const readListed = (files: unknown): readonly ListedFile[] | undefined => {
  if (!Array.isArray(files)) return undefined;
  const listed = files.flatMap((file: unknown) => {
    if (!isFields(file)) return [];
    const { name, bytes, sha256 } = file;
    return isText(name) && isCount(bytes) && isHexHash(sha256) ? [{ name, bytes, sha256 }] : [];
  });
  return listed.length === files.length ? listed : undefined;
};

/** An event as far as the proof needs to know it. */
export type EventClaims = {
  readonly ledger: string;
  readonly position: number;
  readonly stream: string;
  readonly version: number;
  /** Sections a home says it has; empty for all other events. */
  readonly sections: readonly string[];
  /** SHA-256 of each photo it names, in hex. */
  readonly photos: readonly string[];
};

export const readEvent = (body: Uint8Array): EventClaims | undefined => {
  const { ledger, position, stream, version, data } = readJson(body) ?? {};
  if (!isText(ledger) || !isCount(position) || !isText(stream) || !isCount(version)) return undefined;
  const { sections, photos } = isFields(data) ? data : {};
  return {
    ...{ ledger, position, stream, version },
    sections: isTexts(sections) ? sections : [],
    photos: isTexts(photos) ? photos.filter(isHexHash) : [],
  };
};

export type InclusionLine = {
  readonly leaf: string;
  readonly path: readonly Uint8Array[];
  readonly position: number;
  readonly stream: string;
  readonly version: number;
};

export const readInclusion = (line: Uint8Array): InclusionLine | undefined => {
  const { leaf, path: given, position, stream, version } = readJson(line) ?? {};
  const path = readPath(given);
  if (!isHexHash(leaf) || path === undefined) return undefined;
  if (!isCount(position) || !isText(stream) || !isCount(version)) return undefined;
  return { leaf, path, position, stream, version };
};

export const readHead = (line: Uint8Array): HeadProof | undefined => {
  const fields = readJson(line) ?? {};
  const { index } = fields;
  const read = readInclusion(line);
  if (read === undefined || !isCount(index)) return undefined;
  const { path, ...head } = read;
  return { head, index, path };
};

export type ConsistencyLine = {
  readonly from: number;
  readonly to: number;
  readonly path: readonly Uint8Array[];
};

export const readConsistency = (line: Uint8Array): ConsistencyLine | undefined => {
  const { from, to, path: given } = readJson(line) ?? {};
  const path = readPath(given);
  return isCount(from) && isCount(to) && path !== undefined ? { from, to, path } : undefined;
};

export const readKeyChangeLine = (line: Uint8Array): string | undefined => {
  const { note } = readJson(line) ?? {};
  return isText(note) ? note : undefined;
};

/** More than any tree of up to 2^53 leaves needs. */
const PATH_LIMIT = 110;

const readPath = (path: unknown): readonly Uint8Array[] | undefined => {
  if (!isTexts(path) || path.length > PATH_LIMIT) return undefined;
  const hashes = path.flatMap((text) => bytesOfBase64(text) ?? []);
  return hashes.length === path.length && hashes.every(({ length }) => length === HASH_BYTES)
    ? hashes
    : undefined;
};

/** Lines of a file, without their newlines; what stands behind the last newline is a line cut short. */
export const linesOf = (bytes: Uint8Array): readonly Uint8Array[] => {
  const lines: Uint8Array[] = [];
  let from = 0;
  for (let end = bytes.indexOf(NEWLINE); end >= 0; end = bytes.indexOf(NEWLINE, from)) {
    lines.push(bytes.subarray(from, end));
    from = end + 1;
  }
  return from < bytes.length ? [...lines, bytes.subarray(from)] : lines;
};

const NEWLINE = 0x0a;
