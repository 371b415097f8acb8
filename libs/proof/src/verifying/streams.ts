import { EVIDENCE, EVIDENCE_FOLDER } from '../evidence/files';
import type { EvidenceManifest } from '../evidence/files';
import type { StreamHead } from '../stream-heads';
import type { Genuine } from './events';
import { STREAMS } from './heads';
import type { Heads } from './heads';
import { failed, proven } from './outcome';
import type { Outcome } from './outcome';

const MANIFEST = `${EVIDENCE_FOLDER}${EVIDENCE.manifest}`;

/** Each stream is here from its first event to its last, and all the home's own streams are here. */
export const streamsComplete = (
  manifest: EvidenceManifest,
  { heads, outcomes }: Heads,
  genuine: readonly Genuine[],
  known: readonly Outcome[],
): readonly Outcome[] => {
  const gone = namedAlready(known);
  return [
    ...outcomes,
    ...summedUp(manifest.streams.flatMap((stream) => streamOutcomes(stream, { heads, genuine, gone }))),
    ...homeComplete(manifest, genuine),
    ...countOutcomes(manifest, genuine, known),
  ];
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

const OWN_KINDS = /^(?:home|section)\//;

/** The home's own streams are told one by one; that all those of what was used are whole is one thing to say. */
const summedUp = (outcomes: readonly Outcome[]): readonly Outcome[] => {
  const used = outcomes.filter(({ is, place }) => is === 'proven' && !OWN_KINDS.test(place.stream ?? ''));
  if (used.length === 0) return outcomes;
  const events = used.reduce((sum, { values }) => sum + Number(values['events']), 0);
  return [
    ...outcomes.filter((outcome) => !used.includes(outcome)),
    proven('used-complete', { streams: used.length, events }),
  ];
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
