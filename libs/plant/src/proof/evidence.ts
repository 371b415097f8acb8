import type { Envelope } from '@libs/kernel';
import { envelopeOf, sha256 } from '@libs/ledger';
import type { LedgerTree, StoredEvent } from '@libs/ledger';
import { byBytes, evidenceDigest, evidenceFiles } from '@libs/proof';
import type { HeadsTree, ProvenEvent } from '@libs/proof';
import { checkpointAt } from './checkpoints';
import type { Ground } from './checkpoints';
import { keyOfNote } from './keys';
import type { Evidence } from './plant-proof';
import { RULEBOOK_STREAM, homeIn, isIssueOf, ownStreams, revisionsOf, streamsUsed } from './subjects';

/** A home's events up to a position, with all that proves them: from the ledger alone, never from a view. */
export const evidenceOf = async (
  ground: Ground,
  serial: string,
  at: number | null,
): Promise<Evidence | undefined> => {
  const { ledger, proving } = ground;
  const checkpoint = await checkpointAt(ground, at ?? undefined);
  const position = checkpoint.size;
  const found = await homeUnder(proving.tree, serial, position);
  if (found === undefined) return undefined;

  const heads = await proving.tree.headsAt(position);
  const gathered = await gather(proving.tree, heads, { ...found, position });
  const files = evidenceFiles(sha256, {
    ledger: ledger.id,
    home: found.home,
    position,
    events: await proven(proving.tree, gathered.stored, position),
    heads: gathered.streams.flatMap((stream) => heads.proofOf(stream) ?? []),
    also: gathered.also,
    checkpoint: checkpoint.note,
    key: keyOfNote(proving.keys, checkpoint.note),
  });
  const { streams, events } = gathered;
  return { ...found, position, checkpoint, streams, events, files, digest: evidenceDigest(sha256, files) };
};

type Found = { readonly home: string; readonly sections: readonly string[] };

/** By a home's serial or any of its sections'. */
const homeUnder = async (tree: LedgerTree, serial: string, position: number): Promise<Found | undefined> =>
  homeIn(parsed(await tree.stored([`home/${serial}`, `section/${serial}`], position)));

type Gathered = {
  readonly streams: readonly string[];
  readonly also: readonly string[];
  readonly stored: readonly StoredEvent[];
  readonly events: readonly Envelope[];
};

const gather = async (
  tree: LedgerTree,
  heads: HeadsTree,
  { home, sections, position }: Found & { readonly position: number },
): Promise<Gathered> => {
  const isThere = (stream: string): boolean => heads.proofOf(stream) !== undefined;
  const own = ownStreams(home, sections).filter(isThere);
  const ownStored = await tree.stored(own, position);
  const ownEvents = parsed(ownStored);
  const used = streamsUsed(ownEvents).filter(isThere);
  const revisions = revisionsOf(ownEvents);
  const issued = (await tree.stored([RULEBOOK_STREAM], position)).filter((event) =>
    isIssueOf(revisions, oneParsed(event)),
  );
  const stored = [...ownStored, ...(await tree.stored(used, position)), ...issued].sort(
    (a, b) => a.position - b.position,
  );
  return {
    streams: [...own, ...used].sort(byBytes),
    also: issued.length === 0 ? [] : [RULEBOOK_STREAM],
    stored,
    events: parsed(stored),
  };
};

const proven = async (
  tree: LedgerTree,
  stored: readonly StoredEvent[],
  size: number,
): Promise<readonly ProvenEvent[]> => {
  const paths = await tree.inclusion(
    stored.map(({ position }) => position),
    size,
  );
  return stored.map((event, n) => ({ ...event, path: paths[n] ?? [] }));
};

const oneParsed = ({ body }: StoredEvent): Envelope => envelopeOf(Buffer.from(body).toString());
const parsed = (stored: readonly StoredEvent[]): readonly Envelope[] => stored.map(oneParsed);
