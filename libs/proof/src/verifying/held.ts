import { hexOf, utf8 } from '../bytes';
import { readCheckpoint } from '../checkpoint';
import type { Checkpoint } from '../checkpoint';
import { CONSISTENCY } from '../evidence/files';
import type { PacketFiles } from '../evidence/files';
import { linesOf, readConsistency } from '../evidence/reading';
import type { TreeHashing } from '../hashing';
import { leadsTo } from '../key-change';
import { readNote, signingBy } from '../signed-note';
import { extendsTree } from '../tree-proofs';
import { keyFromText, sameKey } from '../verifier-key';
import type { NoteTools, VerifierKey } from '../verifier-key';
import { failed, open, proven } from './outcome';
import type { Outcome } from './outcome';
import type { SignedCheckpoint } from './signed-checkpoint';

/** What the reader holds from elsewhere, and trusts. */
export type Held = {
  /** A checkpoint of the same ledger, got earlier. */
  readonly checkpoint?: string | undefined;
  /** The plant's public key, as `NAME+ID+KEY`. */
  readonly key?: string | undefined;
  /** Bridges from older checkpoints, got from the plant on demand: lines as in a packet's own file of them. */
  readonly bridge?: string | undefined;
};

type Ground = {
  readonly files: PacketFiles;
  readonly signed: SignedCheckpoint;
  readonly hashing: TreeHashing;
};

type Bridged = Ground & { readonly bridge: string };

/** The packet against what the reader holds: without that, a forger with a key of their own is not found out. */
export const againstHeld = (ground: Ground, held: Held, tools: NoteTools): readonly Outcome[] => {
  const { key, checkpoint } = ground.signed;
  if (key === undefined || checkpoint === undefined) return [];
  if (held.key === undefined && held.checkpoint === undefined)
    return [open('key-unconfirmed', { key: hexOf(key.id) })];
  return [
    ...(held.key === undefined ? [] : keyOutcomes(held.key, ground.signed, tools)),
    ...(held.checkpoint === undefined
      ? []
      : checkpointOutcomes(held.checkpoint, checkpoint, { ...ground, bridge: held.bridge ?? '' }, tools)),
  ];
};

const keyOutcomes = (text: string, signed: SignedCheckpoint, tools: NoteTools): readonly Outcome[] => {
  const held = keyFromText(tools.sha256, text.trim());
  if (held === undefined) return [failed('held-unreadable', {}, { what: 'key' })];
  return [isOrFollows(held, signed) ? known(held) : foreign(held, signed)];
};

const isOrFollows = (held: VerifierKey, { key, changes }: SignedCheckpoint): boolean =>
  key !== undefined && (sameKey(held, key) || leadsTo(held, changes, key) || leadsTo(key, changes, held));

const known = ({ id }: VerifierKey): Outcome => proven('key-known', { key: hexOf(id) });
const foreign = ({ id }: VerifierKey, { key }: SignedCheckpoint): Outcome =>
  failed('key-foreign', {}, { key: key === undefined ? '' : hexOf(key.id), signedBy: hexOf(id) });

const checkpointOutcomes = (
  text: string,
  now: Checkpoint,
  ground: Bridged,
  tools: NoteTools,
): readonly Outcome[] => {
  const note = readNote(text);
  const held = note === undefined ? undefined : readCheckpoint(note.text);
  if (note === undefined || held === undefined)
    return [failed('held-unreadable', {}, { what: 'checkpoint' })];
  if (held.origin !== now.origin)
    return [failed('held-of-another-ledger', {}, { held: held.origin, packet: now.origin })];

  const signer = signersOf(ground.signed).find((key) => signingBy(note, key, tools) === 'signed');
  if (signer === undefined)
    return [
      failed(
        'key-foreign',
        {},
        {
          key: ground.signed.key === undefined ? '' : hexOf(ground.signed.key.id),
          signedBy: note.signatures.map(({ keyId }) => hexOf(keyId)).join(', '),
        },
      ),
    ];
  return [known(signer), extension(held, now, ground)];
};

const signersOf = ({ key, changes }: SignedCheckpoint): readonly VerifierKey[] => [
  ...(key === undefined ? [] : [key]),
  ...changes.flatMap(({ from, to }) => [from, to]),
];

const extension = (held: Checkpoint, now: Checkpoint, { files, hashing, bridge }: Bridged): Outcome => {
  const sizes = { held: held.size, packet: now.size };
  if (held.size > now.size) return failed('held-later', {}, sizes);

  const first = { size: held.size, root: held.root };
  const second = { size: now.size, root: now.root };
  if (held.size === now.size)
    return extendsTree(hashing, { first, second, path: [] })
      ? proven('checkpoint-extends', sizes)
      : failed('held-contradicted', {}, sizes);

  const paths = [...linesOf(files.get(CONSISTENCY) ?? utf8('')), ...linesOf(utf8(bridge))]
    .flatMap((line) => readConsistency(line) ?? [])
    .filter(({ from, to }) => from === held.size && to === now.size);
  if (paths.length === 0) return failed('held-unbridged', { file: CONSISTENCY }, sizes);
  return paths.some(({ path }) => extendsTree(hashing, { first, second, path }))
    ? proven('checkpoint-extends', sizes)
    : failed('held-contradicted', { file: CONSISTENCY }, sizes);
};
