import type { Checkpoint } from '../checkpoint';
import { EVIDENCE, EVIDENCE_FOLDER } from '../evidence/files';
import type { EvidenceManifest, PacketFiles } from '../evidence/files';
import { linesOf, readHead } from '../evidence/reading';
import type { TreeHashing } from '../hashing';
import { isHead } from '../stream-heads';
import type { StreamHead } from '../stream-heads';
import type { Genuine } from './events';
import { failed, proven } from './outcome';
import type { Outcome } from './outcome';

const STREAMS = `${EVIDENCE_FOLDER}${EVIDENCE.streams}`;
const MANIFEST = `${EVIDENCE_FOLDER}${EVIDENCE.manifest}`;

type Ground = {
  readonly files: PacketFiles;
  readonly manifest: EvidenceManifest;
  readonly checkpoint: Checkpoint | null;
  readonly hashing: TreeHashing;
};

type Heads = { readonly heads: ReadonlyMap<string, StreamHead>; readonly outcomes: readonly Outcome[] };

/** Each stream is here from its first event to its last, and all the home's own streams are here. */
export const streamsComplete = (
  ground: Ground,
  genuine: readonly Genuine[],
  known: readonly Outcome[],
): readonly Outcome[] => {
  const { heads, outcomes } = headsFound(ground);
  const gone = namedAlready(known);
  return [
    ...outcomes,
    ...ground.manifest.streams.flatMap((stream) => streamOutcomes(stream, { heads, genuine, gone })),
    ...homeComplete(ground.manifest, genuine),
    ...countOutcomes(ground.manifest, genuine, known),
  ];
};

const headsFound = ({ files, manifest, checkpoint, hashing }: Ground): Heads => {
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

/** Events that were named as missing or changed by the leaf they had: once is enough. */
const namedAlready = (known: readonly Outcome[]): ReadonlySet<string> =>
  new Set(known.map(({ place: { stream, version } }) => `${stream ?? ''} ${version ?? ''}`));

type Found = {
  readonly heads: ReadonlyMap<string, StreamHead>;
  readonly genuine: readonly Genuine[];
  readonly gone: ReadonlySet<string>;
};

const streamOutcomes = (stream: string, { heads, genuine, gone }: Found): readonly Outcome[] => {
  const head = heads.get(stream);
  if (head === undefined) return [];

  const own = genuine.filter(({ proof }) => proof.stream === stream);
  const versions = new Map(own.map(({ proof }) => [proof.version, proof]));
  const missing = Array.from({ length: head.version }, (_, n) => n + 1).filter((v) => !versions.has(v));
  const last = versions.get(head.version);
  if (last !== undefined && last.leaf !== head.leaf) return [failed('head-wrong', { file: STREAMS, stream })];
  if (missing.length > 0)
    return missing
      .filter((version) => !gone.has(`${stream} ${version}`))
      .map((version) => failed('event-dropped', { stream, version }));
  return [proven('stream-complete', { events: head.version }, { stream })];
};

/** A home's own events say which sections it has. */
const homeComplete = (
  { home, streams }: EvidenceManifest,
  genuine: readonly Genuine[],
): readonly Outcome[] => {
  const stream = `home/${home}`;
  const sections = new Set(
    genuine.flatMap(({ event, proof }) => (proof.stream === stream ? (event.claims?.sections ?? []) : [])),
  );
  const missing = [stream, ...[...sections].map((serial) => `section/${serial}`)].filter(
    (one) => !streams.includes(one),
  );
  return missing.length > 0
    ? missing.map((one) => failed('stream-missing', { file: MANIFEST, stream: one }))
    : [proven('home-complete', { home, sections: sections.size })];
};

const countOutcomes = (
  { events }: EvidenceManifest,
  genuine: readonly Genuine[],
  known: readonly Outcome[],
): readonly Outcome[] =>
  genuine.length === events || known.length > 0
    ? []
    : [failed('count-wrong', { file: MANIFEST }, { expected: events, found: genuine.length })];
