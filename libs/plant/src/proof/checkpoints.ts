import { sha256 } from '@libs/ledger';
import {
  checkpointText,
  hexOf,
  originOf,
  readCheckpoint,
  readNote,
  sameBytes,
  signedNote,
  utf8,
} from '@libs/proof';
import type { Ledger } from '@libs/ledger';
import { LedgerContradicts, NothingToSign } from './plant-proof';
import type { MadeCheckpoint, Proving } from './plant-proof';

export type Ground = { readonly ledger: Pick<Ledger, 'id' | 'head'>; readonly proving: Proving };

/**
 * Nothing in a checkpoint depends on when it was asked for: signed for an older size years later, it comes out the
 * same, byte for byte, as long as the key is the same. One that was kept is never made again.
 */
export const checkpointAt = async ({ ledger, proving }: Ground, wanted?: number): Promise<MadeCheckpoint> => {
  const head = await ledger.head();
  const size = wanted ?? head;
  if (size < 1 || size > head || !Number.isSafeInteger(size)) throw new NothingToSign(size, head);

  const kept = await proving.checkpoints.at(size);
  return kept === undefined ? signed({ ledger, proving }, size) : madeOf(size, kept);
};

const signed = async ({ ledger, proving }: Ground, size: number): Promise<MadeCheckpoint> => {
  const { tree, checkpoints, keys } = proving;
  await assertOnlyGrew(proving);
  const [root, heads, until] = [
    await tree.rootAt(size),
    await tree.headsAt(size),
    await tree.recordedAt(size),
  ];
  const text = checkpointText({ origin: originOf(ledger.id), size, root, heads, until });
  return madeOf(size, await checkpoints.keep(size, signedNote(text, [keys.signer()])));
};

/** A log must never sign two checkpoints that contradict each other (C2SP tlog-checkpoint). */
const assertOnlyGrew = async ({ tree, checkpoints }: Proving): Promise<void> => {
  const latest = await checkpoints.latest();
  const before = readCheckpoint(readNote(latest ?? '')?.text ?? '');
  if (latest === undefined) return;
  if (before === undefined || !sameBytes(await tree.rootAt(before.size), before.root))
    throw new LedgerContradicts(before?.size ?? 0);
};

const madeOf = (size: number, note: string): MadeCheckpoint => ({
  size,
  note,
  key: hexOf(readNote(note)?.signatures[0]?.keyId ?? new Uint8Array()),
  sha256: hexOf(sha256(utf8(note))),
});
