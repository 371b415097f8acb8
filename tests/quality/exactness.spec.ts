import {
  afterLot,
  cautiousShare,
  conditionalOddsInterval,
  conditionalOddsRatio,
  gainFor,
  limitFor,
  mostWithoutAlarm,
  resumeInspection,
  RULE_SET_RUN_LENGTHS,
  RULE_SETS,
  ruleRunLength,
  runUnitCusum,
  startInspection,
  unitChartFor,
  unitCusumRunLength,
  workdaysBetween,
} from '@libs/quality';
import type { Inspection, LotResult } from '@libs/quality';

const TEA = [
  [3, 1],
  [1, 3],
] as const;

/** Chances of 0 to 4 right cups when the odds are as given: weights 1, 16, 36, 16, 1 times powers of the odds. */
const cups = (odds: number): readonly number[] => {
  const weights = [1, 16, 36, 16, 1].map((ways, right) => ways * odds ** right);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
};

describe('the conditional odds ratio of the tea table (Fisher 1935; equations by hand)', () => {
  it('makes three right cups the mean, to the last digits', () => {
    const mean = cups(conditionalOddsRatio(TEA)).reduce((sum, chance, right) => sum + chance * right, 0);
    expect(mean).toBeCloseTo(3, 12);
  });

  it('has an interval whose ends leave 2.5 % outside', () => {
    const { low, high } = conditionalOddsInterval(TEA);
    expect((cups(low)[3] ?? 0) + (cups(low)[4] ?? 0)).toBeCloseTo(0.025, 12);
    expect(1 - (cups(high)[4] ?? 0)).toBeCloseTo(0.025, 12);
  });
});

/** A generator of random bits that every run repeats (mulberry32). */
const random = (seed: number) => () => {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
};

describe('the unit-by-unit chart', () => {
  it('waits as long for a false signal as its chain says (by hand: a signal on the second defective in a row)', () => {
    // Gain 1, limit 2: two defective in a row, or one more defective than good since 0. For p = 1/2 a fair walk
    // reflected at 0: six units on average.
    expect(unitCusumRunLength({ gain: 1, limit: 2 }, 0.5)).toBeCloseTo(6, 12);
  });

  it('signals in a long simulated run as often as it states', () => {
    const design = { gain: gainFor(0.05, 0.1), limit: 40 };
    const next = random(5);
    const run = runUnitCusum(
      Array.from({ length: 2_000_000 }, () => next() < 0.05),
      design,
    );
    const seen = 2_000_000 / run.signals.length;
    // 4600 signals: a standard error of 1.5 %.
    expect(Math.abs(seen / unitCusumRunLength(design, 0.05) - 1)).toBeLessThan(0.05);
  });

  it('takes the lowest limit that keeps its part of the budget', () => {
    const limit = limitFor(13, 0.05, 2000);
    expect(unitCusumRunLength({ gain: 13, limit }, 0.05)).toBeGreaterThanOrEqual(2000);
    expect(unitCusumRunLength({ gain: 13, limit: limit - 1 }, 0.05)).toBeLessThan(2000);
  });

  it('waits longer the more charts share one budget', () => {
    const one = { falseAlarmsPerMonth: 1, charts: 1 };
    const many = { falseAlarmsPerMonth: 1, charts: 16 };
    expect(workdaysBetween(many)).toBeCloseTo(16 * workdaysBetween(one), 9);
    const station = { usual: 0.03, unitsPerDay: 8 };
    expect(unitChartFor(station, many).limit).toBeGreaterThan(unitChartFor(station, one).limit);
    expect(unitChartFor(station, many).unitsBetween).toBeGreaterThanOrEqual(8 * workdaysBetween(many));
  });

  it('takes a share counted on few units for higher than it looks', () => {
    expect(cautiousShare(1, 40)).toBeGreaterThan(1 / 40);
    expect(cautiousShare(100, 4000)).toBeLessThan(1.15 * (100 / 4000));
  });

  it('lets through no more than the chance it was given', () => {
    // Binomial of 40 at 5 %: P(X > 6) = 0.00338, P(X > 5) = 0.0139 (recomputed by hand from the distribution).
    expect(mostWithoutAlarm(40, 0.05, 0.004)).toBe(6);
    expect(mostWithoutAlarm(40, 0.05, 0.014)).toBe(5);
  });
});

describe('what run rules cost (Champ and Woodall 1987 print 91.75 for the four of Western Electric)', () => {
  it.each(['few-counts', 'western-electric'] as const)('%s: as worked out', (set) => {
    expect(ruleRunLength(RULE_SETS[set])).toBeCloseTo(RULE_SET_RUN_LENGTHS[set] ?? NaN, 2);
  });
});

const lots = (inspection: Inspection, results: readonly LotResult[], mayReduce = false): Inspection =>
  results.reduce((now, lot) => afterLot(now, lot, { mayReduce }), inspection);

const good: LotResult = { accepted: true, comfortably: true };
const bad: LotResult = { accepted: false };

describe('switching (ISO 2859-1:1999, 9.3 and 9.4, as restated; the text was not seen)', () => {
  it('tightens after two of five lots not accepted, and not when six apart', () => {
    expect(lots(startInspection, [bad, good, good, good, bad]).severity).toBe('tightened');
    expect(lots(startInspection, [bad, good, good, good, good, bad]).severity).toBe('normal');
  });

  it('goes back to normal after five accepted in a row', () => {
    expect(lots(resumeInspection, [good, good, good, good]).severity).toBe('tightened');
    expect(lots(resumeInspection, [bad, good, good, good, good, good]).severity).toBe('normal');
  });

  it('stops after five not accepted in all while tightened', () => {
    expect(lots(resumeInspection, [bad, good, bad, good, bad, good, bad, good, bad]).severity).toBe(
      'stopped',
    );
  });

  it('counts a lot sent again for nothing', () => {
    expect(lots(startInspection, [bad, { ...bad, resubmitted: true }]).severity).toBe('normal');
  });

  it('reduces at a score of thirty, with leave, and ends that at the first lot not accepted', () => {
    const fifteen = Array.from({ length: 15 }, () => good);
    expect(lots(startInspection, fifteen).severity).toBe('normal');
    const reduced = lots(startInspection, fifteen, true);
    expect(reduced.severity).toBe('reduced');
    expect(lots(reduced, [bad], true).severity).toBe('normal');
    expect(lots(reduced, [{ accepted: true, between: true }], true).severity).toBe('normal');
  });
});
