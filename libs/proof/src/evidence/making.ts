import { canonicalJson } from '@libs/kernel';
import { base64Of, hexOf, joined, utf8 } from '../bytes';
import type { Sha256 } from '../hashing';
import { signedNote } from '../signed-note';
import type { Signer } from '../signed-note';
import type { HeadProof } from '../stream-heads';
import { keyText } from '../verifier-key';
import type { VerifierKey } from '../verifier-key';
import {
  EVIDENCE,
  EVIDENCE_FOLDER,
  EVIDENCE_FORMAT,
  PACKET_FORMAT,
  PACKET_MANIFEST,
  PACKET_SEAL,
} from './files';
import type { EvidenceManifest, ListedFile, PacketFiles, PacketManifest } from './files';

/** An event as it is stored, and its way up to the root. */
export type ProvenEvent = {
  readonly position: number;
  readonly stream: string;
  readonly version: number;
  readonly body: Uint8Array;
  readonly leaf: Uint8Array;
  readonly path: readonly Uint8Array[];
};

export type EvidenceParts = {
  readonly ledger: string;
  readonly home: string;
  readonly position: number;
  /** By position. */
  readonly events: readonly ProvenEvent[];
  /** One for each stream, by name. */
  readonly heads: readonly HeadProof[];
  /** Streams of which only some events are given. */
  readonly also: readonly string[];
  /** The signed note. */
  readonly checkpoint: string;
  readonly key: VerifierKey;
};

/** The evidence files, `evidence/manifest.json` first. */
export const evidenceFiles = (sha256: Sha256, parts: EvidenceParts): PacketFiles => {
  const { ledger, home, position, also, events, heads, checkpoint, key } = parts;
  const content: PacketFiles = new Map([
    [EVIDENCE.checkpoint, utf8(checkpoint)],
    [EVIDENCE.events, lines(events.map(({ body }) => body))],
    [EVIDENCE.inclusion, lines(events.map(inclusionLine).map(utf8))],
    [EVIDENCE.key, utf8(`${keyText(key)}\n`)],
    [EVIDENCE.streams, lines(heads.map(headLine).map(utf8))],
  ]);
  const manifest: EvidenceManifest = {
    format: EVIDENCE_FORMAT,
    ledger,
    home,
    position,
    streams: heads.map(({ head }) => head.stream),
    also,
    events: events.length,
    files: listed(sha256, content),
  };
  return new Map(
    [[EVIDENCE.manifest, jsonFile(manifest)] as const, ...content].map(([name, bytes]) => [
      `${EVIDENCE_FOLDER}${name}`,
      bytes,
    ]),
  );
};

/** SHA-256 of the evidence's manifest, and so of all evidence: the same packet has the same. */
export const evidenceDigest = (sha256: Sha256, files: PacketFiles): string =>
  hexOf(sha256(files.get(`${EVIDENCE_FOLDER}${EVIDENCE.manifest}`) ?? new Uint8Array()));

/** A whole packet: its evidence and all that makes it readable, listed, and the list signed. */
export const sealedPacket = (
  { sha256, signer }: { readonly sha256: Sha256; readonly signer: Signer },
  position: number,
  files: PacketFiles,
): PacketFiles => {
  const manifest: PacketManifest = {
    format: PACKET_FORMAT,
    evidence: evidenceDigest(sha256, files),
    files: listed(sha256, files),
  };
  const bytes = jsonFile(manifest);
  const seal = signedNote(sealText(signer.key.name, position, sha256(bytes)), [signer]);
  return new Map([[PACKET_MANIFEST, bytes], [PACKET_SEAL, utf8(seal)], ...files]);
};

/** What the plant signs of a packet: which ledger, how far, and the hash of the list of its files. */
export const sealText = (origin: string, position: number, digest: Uint8Array): string =>
  `studbook packet\n${origin}\n${position}\n${base64Of(digest)}\n`;

const listed = (sha256: Sha256, files: PacketFiles): readonly ListedFile[] =>
  [...files].map(([name, bytes]) => ({ name, bytes: bytes.length, sha256: hexOf(sha256(bytes)) }));

/** Readable to people: indented, one member a line. */
const jsonFile = (value: EvidenceManifest | PacketManifest): Uint8Array =>
  utf8(`${JSON.stringify(value, null, 2)}\n`);

const NEWLINE = Uint8Array.of(0x0a);
const lines = (texts: readonly Uint8Array[]): Uint8Array =>
  joined(...texts.flatMap((text) => [text, NEWLINE]));

const inclusionLine = ({ leaf, path, position, stream, version }: ProvenEvent): string =>
  canonicalJson({ leaf: hexOf(leaf), path: path.map(base64Of), position, stream, version });

const headLine = ({ head, index, path }: HeadProof): string =>
  canonicalJson({ ...head, index, path: path.map(base64Of) });
