/** Files by name, in the order they stand in the packet. */
export type PacketFiles = ReadonlyMap<string, Uint8Array>;

/** What proves a home's history, and nothing else: these come out the same, byte for byte, whenever they are asked for. */
export const EVIDENCE_FOLDER = 'evidence/';
export const EVIDENCE = {
  /** What is here, and the SHA-256 of each file. */
  manifest: 'manifest.json',
  /** One event a line: the very bytes the ledger stores. */
  events: 'events.jsonl',
  /** One line an event: its leaf and the hashes that lead from it to the signed root. */
  inclusion: 'inclusion.jsonl',
  /** One line a stream: its last event, and the hashes that lead from it to the signed root over all streams. */
  streams: 'streams.jsonl',
  /** The ledger's size and roots, signed. */
  checkpoint: 'checkpoint.txt',
  /** The public key it is signed with. */
  key: 'key.txt',
} as const;

/** Beside the evidence, because they grow with time: these prove themselves. */
export const KEY_CHANGES = 'key-changes.jsonl';
export const CONSISTENCY = 'consistency.jsonl';

/** Photos, each named after its SHA-256: the events that speak of them prove them. */
export const PHOTO_FOLDER = 'photos/';

/** The whole packet: what the plant issued, and its signature under that. */
export const PACKET_MANIFEST = 'manifest.json';
export const PACKET_SEAL = 'manifest.note';

export type ListedFile = { readonly name: string; readonly bytes: number; readonly sha256: string };

export type EvidenceManifest = {
  readonly format: typeof EVIDENCE_FORMAT;
  readonly ledger: string;
  readonly home: string;
  /** The ledger's size at the checkpoint: what is proven, is proven up to there. */
  readonly position: number;
  /** Streams that are here whole. */
  readonly streams: readonly string[];
  /** Streams of which single events are here: they are proven to be in the ledger, not that there are no others. */
  readonly also: readonly string[];
  readonly events: number;
  readonly files: readonly ListedFile[];
};

export type PacketManifest = {
  readonly format: typeof PACKET_FORMAT;
  /** SHA-256 of the evidence's manifest. */
  readonly evidence: string;
  readonly files: readonly ListedFile[];
};

export const EVIDENCE_FORMAT = 'studbook-evidence/1';
export const PACKET_FORMAT = 'studbook-packet/1';
