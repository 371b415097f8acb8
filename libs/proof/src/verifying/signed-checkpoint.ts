import { hexOf, sameBytes, textOf, utf8 } from '../bytes';
import { originOf, readCheckpoint } from '../checkpoint';
import type { Checkpoint } from '../checkpoint';
import { EVIDENCE, EVIDENCE_FOLDER, KEY_CHANGES } from '../evidence/files';
import type { EvidenceManifest, PacketFiles } from '../evidence/files';
import { linesOf, readKeyChangeLine } from '../evidence/reading';
import { readKeyChange } from '../key-change';
import type { KeyChange } from '../key-change';
import { readNote, signingBy } from '../signed-note';
import type { SignedNote } from '../signed-note';
import { keyFromText } from '../verifier-key';
import type { NoteTools, VerifierKey } from '../verifier-key';
import { failed, proven } from './outcome';
import type { Outcome } from './outcome';

/** How the ledger stood, as this packet has it signed. */
export type SignedCheckpoint = {
  readonly outcomes: readonly Outcome[];
  readonly key: VerifierKey | undefined;
  readonly changes: readonly KeyChange[];
  /** As written, signed or not: to say what else is wrong, but never to prove anything by unless `signed`. */
  readonly checkpoint: Checkpoint | undefined;
  readonly signed: boolean;
};

const CHECKPOINT = `${EVIDENCE_FOLDER}${EVIDENCE.checkpoint}`;
const KEY = `${EVIDENCE_FOLDER}${EVIDENCE.key}`;

export const signedCheckpoint = (
  files: PacketFiles,
  manifest: EvidenceManifest,
  tools: NoteTools,
): SignedCheckpoint => {
  const note = noteIn(files);
  const checkpoint = note === undefined ? undefined : readCheckpoint(note.text);
  const key = keyIn(files, tools);
  const changes = keyChangesIn(files, tools);
  const wrong = [
    ...(key === undefined ? [failed(files.has(KEY) ? 'key-unreadable' : 'file-missing', { file: KEY })] : []),
    ...changes.outcomes,
    ...checkpointOutcomes(files, manifest, { note, checkpoint, key }, tools),
  ];
  const signed = wrong.length === 0 && checkpoint !== undefined && key !== undefined;
  return {
    outcomes: signed ? [checkpointProven(checkpoint, key)] : wrong,
    key,
    changes: changes.read,
    checkpoint,
    signed,
  };
};

const noteIn = (files: PacketFiles): SignedNote | undefined => {
  const bytes = files.get(CHECKPOINT);
  const text = bytes === undefined ? undefined : textOf(bytes);
  return text === undefined ? undefined : readNote(text);
};

const keyIn = (files: PacketFiles, { sha256 }: NoteTools): VerifierKey | undefined => {
  const text = textOf(files.get(KEY) ?? new Uint8Array());
  return text?.endsWith('\n') === true ? keyFromText(sha256, text.slice(0, -1)) : undefined;
};

type Found = {
  readonly note: SignedNote | undefined;
  readonly checkpoint: Checkpoint | undefined;
  readonly key: VerifierKey | undefined;
};

const checkpointOutcomes = (
  files: PacketFiles,
  { ledger, position }: EvidenceManifest,
  { note, checkpoint, key }: Found,
  tools: NoteTools,
): readonly Outcome[] => {
  const file = { file: CHECKPOINT };
  if (!files.has(CHECKPOINT)) return [failed('file-missing', file)];
  if (note === undefined || checkpoint?.heads === undefined) return [failed('checkpoint-unreadable', file)];

  const of = { ledger: checkpoint.origin, size: checkpoint.size };
  const another = checkpoint.origin !== originOf(ledger) || checkpoint.size !== position;
  return [
    ...(another ? [failed('checkpoint-other', file, { ...of, expected: originOf(ledger), position })] : []),
    ...(key === undefined ? [] : signatureOutcomes(note, key, tools)),
  ];
};

const signatureOutcomes = (note: SignedNote, key: VerifierKey, tools: NoteTools): readonly Outcome[] => {
  const file = { file: CHECKPOINT };
  const values = {
    key: hexOf(key.id),
    signedBy: note.signatures.map(({ keyId }) => hexOf(keyId)).join(', '),
  };
  switch (signingBy(note, key, tools)) {
    case 'signed':
      return note.signatures.every(({ keyId }) => sameBytes(keyId, key.id))
        ? []
        : [failed('key-foreign', file, values)];
    case 'not-by-this-key':
      return [failed('key-foreign', file, values)];
    case 'wrong':
      return [failed('signature-wrong', file, values)];
  }
};

const checkpointProven = ({ origin, size, until = '' }: Checkpoint, key: VerifierKey): Outcome =>
  proven('checkpoint-signed', { ledger: origin, size, until, key: hexOf(key.id) }, { file: CHECKPOINT });

const keyChangesIn = (
  files: PacketFiles,
  tools: NoteTools,
): { readonly read: readonly KeyChange[]; readonly outcomes: readonly Outcome[] } => {
  const read: KeyChange[] = [];
  const outcomes: Outcome[] = [];
  for (const [index, line] of linesOf(files.get(KEY_CHANGES) ?? utf8('')).entries()) {
    const note = readKeyChangeLine(line);
    const change = note === undefined ? undefined : readKeyChange(note, tools);
    if (change === undefined)
      outcomes.push(failed('key-change-wrong', { file: KEY_CHANGES, line: index + 1 }));
    else read.push(change);
  }
  return { read, outcomes };
};
