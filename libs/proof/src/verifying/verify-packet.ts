import { unpackedFiles } from '../archive';
import { EVIDENCE, EVIDENCE_FOLDER } from '../evidence/files';
import type { EvidenceManifest, PacketFiles } from '../evidence/files';
import { readEvidenceManifest } from '../evidence/reading';
import { treeHashing } from '../hashing';
import type { NoteTools } from '../verifier-key';
import { eventsFound } from './events';
import { headsFound } from './heads';
import { againstHeld } from './held';
import type { Held } from './held';
import { listedFiles } from './listed-files';
import { failed, open, proven } from './outcome';
import type { Outcome } from './outcome';
import { packetSeal } from './packet-seal';
import { photosShown } from './photos';
import { signedCheckpoint } from './signed-checkpoint';
import { streamsComplete } from './streams';

const MANIFEST = `${EVIDENCE_FOLDER}${EVIDENCE.manifest}`;

/** The same of a packet that is still one ZIP, and of its wrapping. */
export const verifyPacked = (bytes: Uint8Array, tools: NoteTools, held: Held = {}): readonly Outcome[] => {
  const unpacked = unpackedFiles(bytes);
  if (unpacked === undefined) return [failed('packet-unreadable', {}, { bytes: bytes.length })];
  const { files, differsAt } = unpacked;
  return [
    ...(differsAt === undefined
      ? []
      : [failed('container-altered', {}, { at: differsAt, bytes: bytes.length })]),
    ...verifyPacket(files, tools, held),
  ];
};

/** All there is to say of a packet, from its files alone and what the reader holds: no server, no database. */
export const verifyPacket = (files: PacketFiles, tools: NoteTools, held: Held = {}): readonly Outcome[] => {
  const bytes = files.get(MANIFEST);
  if (bytes === undefined) return [failed('file-missing', { file: MANIFEST })];
  const manifest = readEvidenceManifest(bytes);
  if (manifest === undefined) return [failed('manifest-unreadable', { file: MANIFEST })];

  const hashing = treeHashing(tools.sha256);
  const signed = signedCheckpoint(files, manifest, tools);
  const checkpoint = signed.signed ? (signed.checkpoint ?? null) : null;
  const ground = { files, manifest, hashing, checkpoint };
  const heads = headsFound(ground);
  const found = eventsFound({ ...ground, heads: heads.heads });
  const streams = streamsComplete(manifest, heads, found.genuine, found.outcomes);
  const whole = [
    ...wholeness(files, manifest, tools),
    ...packetSeal(files, manifest.position, signed, tools),
  ];
  const photos = photosShown(tools.sha256, files, found.genuine, whole);
  return once([
    ...whole,
    ...signed.outcomes,
    ...found.outcomes,
    // Nothing is proven of events under a root that nobody signed.
    ...(signed.signed
      ? [proven('events-included', { events: found.genuine.length, size: manifest.position }), ...streams]
      : streams.filter(({ is }) => is === 'failed')),
    ...photos.filter(({ is }) => signed.signed || is === 'failed'),
    ...againstHeld({ files, signed, hashing }, held, tools),
    open('later-unknown', { position: manifest.position }),
    open('truth-not-shown'),
  ]);
};

/** The same thing may be found on two ways; it is said once. */
const once = (outcomes: readonly Outcome[]): readonly Outcome[] => {
  const said = new Set<string>();
  return outcomes.filter((outcome) => {
    const name = JSON.stringify([outcome.code, outcome.place]);
    if (said.has(name)) return false;
    said.add(name);
    return true;
  });
};

const wholeness = (
  files: PacketFiles,
  manifest: EvidenceManifest,
  { sha256 }: NoteTools,
): readonly Outcome[] => {
  const wrong = listedFiles(sha256, files, {
    listed: manifest.files,
    folder: EVIDENCE_FOLDER,
    itself: [MANIFEST],
  });
  return wrong.length > 0 ? wrong : [proven('evidence-whole', { files: manifest.files.length })];
};
