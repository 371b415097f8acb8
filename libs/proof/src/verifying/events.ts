import { hexOf, sameBytes, bytesOfHex } from '../bytes';
import type { Checkpoint } from '../checkpoint';
import { EVIDENCE, EVIDENCE_FOLDER } from '../evidence/files';
import type { EvidenceManifest, PacketFiles } from '../evidence/files';
import { linesOf, readEvent, readInclusion } from '../evidence/reading';
import type { EventClaims, InclusionLine } from '../evidence/reading';
import type { TreeHashing } from '../hashing';
import type { StreamHead } from '../stream-heads';
import { rootFromInclusion } from '../tree-proofs';
import { failed } from './outcome';
import type { Outcome, Place } from './outcome';

const EVENTS = `${EVIDENCE_FOLDER}${EVIDENCE.events}`;
const INCLUSION = `${EVIDENCE_FOLDER}${EVIDENCE.inclusion}`;

/** A line of the events' file: the hash over its bytes, and what it says of itself. */
export type EventLine = {
  readonly line: number;
  readonly leaf: string;
  readonly claims: EventClaims | undefined;
};

/** A line of the proofs' file, and whether it leads to the root that was signed. */
export type ProofLine = InclusionLine & { readonly line: number; readonly holds: boolean };

export type Genuine = { readonly event: EventLine; readonly proof: ProofLine };

export type EventsFound = {
  readonly genuine: readonly Genuine[];
  readonly outcomes: readonly Outcome[];
};

type Ground = {
  readonly files: PacketFiles;
  readonly manifest: EvidenceManifest;
  /** Null where it is not signed: then a path proves nothing, and leaves alone say which event was changed. */
  readonly checkpoint: Checkpoint | null;
  readonly hashing: TreeHashing;
  readonly heads: ReadonlyMap<string, StreamHead>;
};

/** Which events are those that were signed for, and what is wrong with each of the others. */
export const eventsFound = (ground: Ground): EventsFound => {
  const events = eventLines(ground);
  const { proofs, unreadable } = proofLines(ground);
  const { genuine, strange, lost } = matched(events, proofs);
  return {
    genuine,
    outcomes: [
      ...unreadable,
      ...named({ strange, lost, genuine, proofs }, ground),
      ...order(genuine),
      ...foreign(genuine, ground.manifest),
    ],
  };
};

const eventLines = ({ files, hashing }: Ground): readonly EventLine[] =>
  linesOf(files.get(EVENTS) ?? new Uint8Array()).map((body, index) => ({
    line: index + 1,
    leaf: hexOf(hashing.leaf(body)),
    claims: readEvent(body),
  }));

type Proofs = { readonly proofs: readonly ProofLine[]; readonly unreadable: readonly Outcome[] };

const proofLines = (ground: Ground): Proofs => {
  const proofs: ProofLine[] = [];
  const unreadable: Outcome[] = [];
  for (const [index, bytes] of linesOf(ground.files.get(INCLUSION) ?? new Uint8Array()).entries()) {
    const line = index + 1;
    const read = readInclusion(bytes);
    if (read === undefined) unreadable.push(failed('line-unreadable', { file: INCLUSION, line }));
    else proofs.push({ ...read, line, holds: leadsToRoot(read, read.leaf, ground) });
  }
  return { proofs, unreadable };
};

const leadsToRoot = (
  { path, position }: InclusionLine,
  leaf: string,
  { checkpoint, hashing }: Ground,
): boolean => {
  const bytes = bytesOfHex(leaf);
  if (checkpoint === null) return true;
  if (bytes === undefined) return false;

  const root = rootFromInclusion(hashing, { index: position - 1, size: checkpoint.size, leaf: bytes, path });
  return root !== undefined && sameBytes(root, checkpoint.root);
};

type Matched = {
  readonly genuine: readonly Genuine[];
  /** Events no proof speaks for. */
  readonly strange: readonly EventLine[];
  /** Proofs that hold, whose event is not here as it was. */
  readonly lost: readonly ProofLine[];
};

const matched = (events: readonly EventLine[], proofs: readonly ProofLine[]): Matched => {
  const byLeaf = new Map(proofs.flatMap((proof) => (proof.holds ? [[proof.leaf, proof] as const] : [])));
  const genuine: Genuine[] = [];
  const strange: EventLine[] = [];
  for (const event of events) {
    const proof = byLeaf.get(event.leaf);
    if (proof === undefined || !saysTheSame(event.claims, proof)) strange.push(event);
    else genuine.push({ event, proof });
  }
  const here = new Set(genuine.map(({ proof }) => proof));
  return { genuine, strange, lost: proofs.filter((proof) => proof.holds && !here.has(proof)) };
};

/** The position and version the proof speaks of are those in the event itself. */
const saysTheSame = (claims: EventClaims | undefined, proof: InclusionLine): boolean =>
  claims?.position === proof.position && claims.version === proof.version && claims.stream === proof.stream;

type Unsettled = Matched & { readonly proofs: readonly ProofLine[] };

/** A name for everything that has no counterpart: each lost event is looked for among the strange ones. */
const named = (unsettled: Unsettled, ground: Ground): readonly Outcome[] => {
  const outcomes: Outcome[] = [];
  const lost = new Set(unsettled.lost);
  for (const event of unsettled.strange) {
    const was = lostFor(event, lost, unsettled.genuine);
    if (was !== undefined) lost.delete(was);
    outcomes.push(was === undefined ? withoutLost(event, unsettled, ground) : changed(event, was));
  }
  return [...outcomes, ...[...lost].map((proof) => failed('event-dropped', placeOf(proof)))];
};

const lostFor = (
  { claims, line }: EventLine,
  lost: ReadonlySet<ProofLine>,
  genuine: readonly Genuine[],
): ProofLine | undefined => {
  const all = [...lost];
  const same = all.find(
    (proof) =>
      claims?.position === proof.position ||
      (claims?.stream === proof.stream && claims.version === proof.version),
  );
  if (same !== undefined) return same;

  // It does not say, or says wrongly, which one it is: then the one that stood between its neighbours.
  const before = genuine.filter(({ event }) => event.line < line).at(-1)?.proof.position ?? 0;
  const after = genuine.find(({ event }) => event.line > line)?.proof.position ?? Infinity;
  return all.find(({ position }) => position > before && position < after);
};

const changed = ({ claims, line }: EventLine, was: ProofLine): Outcome => {
  const place = { ...placeOf(was), file: EVENTS, line };
  const another = claims !== undefined && (claims.stream !== was.stream || claims.version !== was.version);
  const other = another && claims.position !== was.position;
  return other
    ? failed('event-swapped', place, {
        found: `${claims.stream} ${claims.version}`,
        position: claims.position,
      })
    : failed('event-altered', place);
};

const withoutLost = (event: EventLine, { genuine, proofs }: Unsettled, ground: Ground): Outcome => {
  const place = { ...placeOf(event.claims), file: EVENTS, line: event.line };
  const twin = genuine.find(({ event: { leaf } }) => leaf === event.leaf);
  if (twin !== undefined) return failed('event-repeated', place);

  const own = proofs.find(({ position, holds }) => !holds && position === event.claims?.position);
  if (own !== undefined && (own.leaf === event.leaf || leadsToRoot(own, event.leaf, ground)))
    return failed('proof-wrong', { ...placeOf(own), file: INCLUSION, line: own.line });
  return failed(isAwaited(event.claims, genuine, ground) ? 'proof-missing' : 'event-added', place);
};

/** Its stream goes that far, and nothing else here is that event of it. */
const isAwaited = (
  claims: EventClaims | undefined,
  genuine: readonly Genuine[],
  { heads }: Ground,
): boolean => {
  if (claims === undefined || claims.version > (heads.get(claims.stream)?.version ?? 0)) return false;
  const { stream, version } = claims;
  return !genuine.some(({ proof }) => proof.stream === stream && proof.version === version);
};

const placeOf = (one: { readonly [F in 'stream' | 'version' | 'position']: Place[F] } | undefined): Place =>
  one === undefined ? {} : { stream: one.stream, version: one.version, position: one.position };

/** Lines that do not stand where their position in the ledger puts them. */
const order = (genuine: readonly Genuine[]): readonly Outcome[] => {
  const inOrder = [...genuine].sort((a, b) => a.proof.position - b.proof.position);
  const seen = new Set<ProofLine>();
  return genuine.flatMap(({ event, proof }, index) => {
    const place = { ...placeOf(proof), file: EVENTS, line: event.line };
    if (seen.has(proof)) return [failed('event-repeated', place)];
    seen.add(proof);
    return inOrder[index]?.proof === proof ? [] : [failed('event-out-of-order', place)];
  });
};

/** Events of the ledger that have no business in this packet. */
const foreign = (
  genuine: readonly Genuine[],
  { ledger, streams, also }: EvidenceManifest,
): readonly Outcome[] => {
  const known = new Set([...streams, ...also]);
  return genuine.flatMap(({ event, proof }) =>
    known.has(proof.stream) && event.claims?.ledger === ledger
      ? []
      : [failed('event-foreign', { ...placeOf(proof), file: EVENTS, line: event.line })],
  );
};
