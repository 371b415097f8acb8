import { normalQuantile, normalUpperTail } from './distributions';
import { share } from './rate';

/** Defects per unit; null for no units. */
export const defectsPerUnit = (defects: number, units: number): number | null =>
  share({ count: defects, of: units });

/** Share of units without a defect, if defects fall as Poisson has it. */
export const throughputYield = (defectsPerUnitRate: number): number => Math.exp(-defectsPerUnitRate);

export const defectsPerMillion = (defects: number, units: number, opportunities: number): number | null => {
  const rate = share({ count: defects, of: units * opportunities });
  return rate === null ? null : rate * 1e6;
};

/** One tail and the customary shift of 1.5; null where no defect, or nothing but defects, was seen. */
export const sigmaLevel = (perMillion: number): number | null =>
  perMillion <= 0 || perMillion >= 1e6 ? null : normalQuantile(1 - perMillion / 1e6) + SHIFT;

const SHIFT = 1.5;

/** The other way: defects per million at a sigma level. Some tables add the far tail, visible below 3 sigma only. */
export const perMillionAt = (level: number, tails: 'one' | 'both' = 'one'): number =>
  1e6 * (normalUpperTail(level - SHIFT) + (tails === 'both' ? normalUpperTail(level + SHIFT) : 0));
