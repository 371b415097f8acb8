import { DEFAULT_BUDGET, workdaysBetween } from '@libs/quality';
import { delaysAfterDoubling } from './run-lengths/delays';
import { simulatePlants, STATIONS } from './run-lengths/plants';
import { singleCharts } from './run-lengths/single-charts';

/** A short run of what npm run run-lengths does at length; four standard errors, so that chance does not fail it. */
describe('simulated run lengths', () => {
  it('keep the false alarms of sixteen stations over ten years within the budget', () => {
    const { mean, standardError } = simulatePlants(DEFAULT_BUDGET, 'given', { plants: 12, seed: 1 });
    expect(mean).toBeLessThanOrEqual(DEFAULT_BUDGET + 4 * standardError);
    expect(mean).toBeGreaterThan(DEFAULT_BUDGET / 2);
  });

  it('are as single charts state them', () => {
    for (const { stated, seen, error } of singleCharts(300, 2)) {
      expect(Math.abs(seen - stated)).toBeLessThanOrEqual(4 * error);
    }
  });

  it('find a doubled share at least twice as soon as a weekly p chart of equal in-control time', () => {
    const days = workdaysBetween({ falseAlarmsPerMonth: DEFAULT_BUDGET, charts: STATIONS.length });
    for (const share of [0.01, 0.03, 0.05]) {
      const found = delaysAfterDoubling(share, days, { runs: 1500, seed: 7 });
      expect(found.weekly / found.unitByUnit).toBeGreaterThanOrEqual(2 - 3 * found.ratioError);
    }
  });
});
