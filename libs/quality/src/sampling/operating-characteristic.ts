import { binomialCdf, logChoose, poissonCdf } from '../distributions';
import { crossing } from '../root';
import type { SamplingPlan } from './plans';

type Sampled = Pick<SamplingPlan, 'size' | 'accept'>;

/** Chance that a lot from a process of this share defective is accepted (type B: binomial). */
export const acceptance = ({ size, accept }: Sampled, share: number): number =>
  binomialCdf(accept, size, share);

/** The same for defects a unit, or a small share. */
export const acceptancePoisson = ({ size, accept }: Sampled, share: number): number =>
  poissonCdf(accept, size * share);

/** Chance that this very lot, of which `defective` units are so, is accepted (type A: hypergeometric). */
export const acceptanceOfLot = ({ size, accept }: Sampled, lot: number, defective: number): number => {
  let chance = 0;
  for (let found = Math.max(0, size - (lot - defective)); found <= Math.min(accept, defective); found += 1) {
    chance += Math.exp(
      logChoose(defective, found) + logChoose(lot - defective, size - found) - logChoose(lot, size),
    );
  }
  return Math.min(1, chance);
};

/** The share defective at which lots are accepted with this chance. */
export const shareAccepted = (plan: Sampled, chance: number): number =>
  crossing((share) => acceptance(plan, share) - chance, 0, 1);

export type RiskPoint = { readonly share: number; readonly acceptance: number };

/**
 * The smallest plan that accepts at least as often as the producer's point says, and at most as often as the
 * consumer's. Null past 10 000 units: points too close for a sample to tell them apart.
 */
export const smallestPlan = (producer: RiskPoint, consumer: RiskPoint): SamplingPlan | null => {
  let accept = 0;
  for (let size = 1; size <= LARGEST; size += 1) {
    while (accept < size && acceptance({ size, accept }, producer.share) < producer.acceptance) accept += 1;
    if (acceptance({ size, accept }, consumer.share) <= consumer.acceptance) {
      return { size, accept, reject: accept + 1 };
    }
  }
  return null;
};

const LARGEST = 10_000;
