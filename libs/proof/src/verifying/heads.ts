import type { Checkpoint } from '../checkpoint';
import { EVIDENCE, EVIDENCE_FOLDER } from '../evidence/files';
import type { EvidenceManifest, PacketFiles } from '../evidence/files';
import { linesOf, readHead } from '../evidence/reading';
import type { TreeHashing } from '../hashing';
import { isHead } from '../stream-heads';
import type { StreamHead } from '../stream-heads';
import { failed } from './outcome';
import type { Outcome } from './outcome';

export const STREAMS = `${EVIDENCE_FOLDER}${EVIDENCE.streams}`;

type Ground = {
  readonly files: PacketFiles;
  readonly manifest: EvidenceManifest;
  readonly checkpoint: Checkpoint | null;
  readonly hashing: TreeHashing;
};

/** How far each stream goes, as it was signed. */
export type Heads = {
  readonly heads: ReadonlyMap<string, StreamHead>;
  readonly outcomes: readonly Outcome[];
};

export const headsFound = ({ files, manifest, checkpoint, hashing }: Ground): Heads => {
  const heads = new Map<string, StreamHead>();
  const outcomes: Outcome[] = [];
  for (const [index, bytes] of linesOf(files.get(STREAMS) ?? new Uint8Array()).entries()) {
    const place = { file: STREAMS, line: index + 1 };
    const proof = readHead(bytes);
    const root = checkpoint?.heads;
    if (proof === undefined) outcomes.push(failed('line-unreadable', place));
    else if (root !== undefined && !isHead(hashing, proof, root))
      outcomes.push(failed('head-wrong', { ...place, stream: proof.head.stream }));
    else heads.set(proof.head.stream, proof.head);
  }
  const wrong = new Set(outcomes.map(({ place }) => place.stream));
  const missing = manifest.streams.filter((stream) => !heads.has(stream) && !wrong.has(stream));
  return {
    heads,
    outcomes: [...outcomes, ...missing.map((stream) => failed('head-missing', { file: STREAMS, stream }))],
  };
};
