import { hexOf, textOf } from '../bytes';
import {
  CONSISTENCY,
  EVIDENCE,
  EVIDENCE_FOLDER,
  KEY_CHANGES,
  PACKET_MANIFEST,
  PACKET_SEAL,
} from '../evidence/files';
import type { PacketFiles } from '../evidence/files';
import { evidenceDigest, sealText } from '../evidence/making';
import { readPacketManifest } from '../evidence/reading';
import { readNote, signingBy } from '../signed-note';
import type { NoteTools, VerifierKey } from '../verifier-key';
import { listedFiles } from './listed-files';
import { failed, open, proven } from './outcome';
import type { Outcome } from './outcome';
import type { SignedCheckpoint } from './signed-checkpoint';

const EVIDENCE_MANIFEST = `${EVIDENCE_FOLDER}${EVIDENCE.manifest}`;

/** Whether all files are those the plant issued: listed, and the list signed. */
export const packetSeal = (
  files: PacketFiles,
  position: number,
  signed: Pick<SignedCheckpoint, 'key' | 'changes'>,
  tools: NoteTools,
): readonly Outcome[] => {
  const bytes = files.get(PACKET_MANIFEST);
  if (bytes === undefined) return withoutManifest(files);

  const manifest = readPacketManifest(bytes);
  if (manifest === undefined) return [failed('manifest-unreadable', { file: PACKET_MANIFEST })];

  const digest = evidenceDigest(tools.sha256, files);
  const outcomes = [
    ...(digest === manifest.evidence
      ? []
      : [
          failed(
            'evidence-other',
            { file: EVIDENCE_MANIFEST },
            { expected: manifest.evidence, found: digest },
          ),
        ]),
    ...listedFiles(tools.sha256, files, {
      listed: manifest.files,
      folder: '',
      itself: [PACKET_MANIFEST, PACKET_SEAL],
    }),
    ...sealOutcomes(files, bytes, { position, keys: keysThatMaySign(signed) }, tools),
  ];
  return outcomes.length > 0
    ? outcomes
    : [proven('packet-whole', { files: manifest.files.length }), proven('packet-signed')];
};

/** Evidence alone is a packet too, if nothing else stands beside it that nobody vouches for. */
const withoutManifest = (files: PacketFiles): readonly Outcome[] => {
  const proveThemselves = [CONSISTENCY, KEY_CHANGES];
  const others = [...files.keys()].filter(
    (name) => !name.startsWith(EVIDENCE_FOLDER) && !proveThemselves.includes(name),
  );
  return others.length === 0
    ? [open('packet-unsealed')]
    : [failed('file-missing', { file: PACKET_MANIFEST })];
};

/** The key of the evidence, and those that took over from it since. */
const keysThatMaySign = ({
  key,
  changes,
}: Pick<SignedCheckpoint, 'key' | 'changes'>): readonly VerifierKey[] => {
  if (key === undefined) return [];
  const keys = [key];
  for (const { from, to } of changes) if (keys.some(({ id }) => hexOf(id) === hexOf(from.id))) keys.push(to);
  return keys;
};

const sealOutcomes = (
  files: PacketFiles,
  manifest: Uint8Array,
  { position, keys }: { readonly position: number; readonly keys: readonly VerifierKey[] },
  tools: NoteTools,
): readonly Outcome[] => {
  const bytes = files.get(PACKET_SEAL);
  if (bytes === undefined) return [failed('file-missing', { file: PACKET_SEAL })];
  if (keys.length === 0) return [];

  const note = readNote(textOf(bytes) ?? '');
  const signer = keys.find(
    (key) => note?.signatures.length === 1 && signingBy(note, key, tools) === 'signed',
  );
  if (note === undefined || signer === undefined) return [failed('seal-wrong', { file: PACKET_SEAL })];

  // Well signed, but for another list: then it is the list that was changed.
  return note.text === sealText(signer.name, position, tools.sha256(manifest))
    ? []
    : [failed('file-altered', { file: PACKET_MANIFEST })];
};
