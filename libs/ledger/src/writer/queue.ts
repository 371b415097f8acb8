import type { Asking, Outcome } from '../port';

/** An asking, the digest of what it says, and the caller who waits for the answer. */
export type Waiting = {
  readonly asking: Asking;
  readonly digest: Buffer;
  readonly answer: (outcome: Outcome) => void;
  readonly fail: (fault: unknown) => void;
};

/** Askings taken in one commit. More would make each wait longer, and gain little over the cost of one sync to disk. */
export const BATCH_LIMIT = 256;

/**
 * Fewer are committed at once. Halved, one half is decided while the other is on its way to disk: a fifth more a second
 * for 64 callers on an idle machine, for a tenth more processor time.
 */
export const WORTH_HALVING = 32;

/** Askings that may wait. Far more than a plant's tablets can send; beyond it memory would hide a disk that hangs. */
export const WAITING_LIMIT = 20_000;
