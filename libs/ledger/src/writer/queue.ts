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
 * Fewer are committed at once. Halved, each waits less for the other half to be decided, but every commit costs
 * processor time of its own: a tenth more in all for 64 callers, nothing that shows for 256.
 */
export const WORTH_HALVING = 128;

/** Askings that may wait. Far more than a plant's tablets can send; beyond it memory would hide a disk that hangs. */
export const WAITING_LIMIT = 20_000;
