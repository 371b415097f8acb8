import { scoreOf } from '../bench/trace/score';
import { runTrial } from '../bench/trace/trial';

/** A few plants of fixed seeds: a floor under what the tracer finds. The figures that are published come of many. */
const SEEDS = 12;
const FROM = 70_000_000;

describe('planted causes', () => {
  const score = scoreOf(Array.from({ length: SEEDS }, (_, at) => runTrial(FROM + at, 0)));

  it('are among the first three more often than not', () => {
    expect(score.firstThree).toBeGreaterThan(0.5);
  });

  it('are found more often than by the station with most defects or the commonest lot', () => {
    expect(score.first).toBeGreaterThan(score.baselines['station']?.first ?? 1);
    expect(score.first).toBeGreaterThan(score.baselines['lot']?.first ?? 1);
  });

  it('leave out hardly any home that shares them', () => {
    expect(score.exposureRecall).toBeGreaterThan(0.95);
  });
});
