import { createHash } from 'node:crypto';
import { codeLetter, forLot, singlePlan } from '@libs/quality';
import type { InspectionLevel, QualityLimit, SamplingPlan } from '@libs/quality';
import type { ViewReader } from '@libs/views';

export type SampleWish = {
  /** Homes labelled on these days are the lot. */
  readonly from: string;
  readonly to: string;
  readonly level: InspectionLevel;
  readonly limit: QualityLimit;
  /** Anything; the same seed over the same lot draws the same homes. */
  readonly seed: string;
};

export type AuditSample = SampleWish & {
  readonly lot: number;
  readonly letter: string;
  readonly plan: SamplingPlan;
  readonly homes: readonly string[];
};

/** Null: fewer than two homes were labelled on these days, for which there is no plan. */
export const drawSample =
  (views: Pick<ViewReader, 'labelledBetween'>) =>
  async (wish: SampleWish): Promise<AuditSample | null> => {
    const labelled = await views.labelledBetween({ from: wish.from, to: wish.to });
    const lot = [...new Set(labelled.map(({ home }) => home))];
    const letter = codeLetter(lot.length, wish.level);
    const plan = letter === null ? null : singlePlan('normal', letter, wish.limit);
    if (letter === null || plan === null) return null;

    const taken = forLot(plan, lot.length);
    const homes = lot.toSorted(byDraw(wish.seed)).slice(0, taken.size).toSorted();
    return { ...wish, lot: lot.length, letter, plan: taken, homes };
  };

/**
 * Homes in the order of SHA-256 over the seed, a line feed and the serial: nobody can choose, and anyone can do it again
 * with a hash program.
 */
const byDraw = (seed: string): ((a: string, b: string) => number) => {
  const rank = (serial: string): string => createHash('sha256').update(`${seed}\n${serial}`).digest('hex');
  return (a, b) => (rank(a) < rank(b) ? -1 : 1);
};
