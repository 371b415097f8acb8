import { clopperPearson, poissonExact, wilson } from '@libs/quality';
import fc from 'fast-check';

const anyRate = fc
  .tuple(fc.integer({ min: 1, max: 400 }), fc.nat(400))
  .map(([of, count]) => ({ of, count: count % (of + 1) }));

describe('an interval', () => {
  it('has no bounds where nothing was counted', () => {
    expect(wilson({ count: 0, of: 0 })).toStrictEqual({ low: null, high: null });
    expect(clopperPearson({ count: 0, of: 0 })).toStrictEqual({ low: null, high: null });
  });

  it('ends exactly at 0 when none, and at 1 when all are counted', () => {
    expect([wilson({ count: 0, of: 20 }).low, clopperPearson({ count: 0, of: 20 }).low]).toStrictEqual([
      0, 0,
    ]);
    expect([wilson({ count: 20, of: 20 }).high, clopperPearson({ count: 20, of: 20 }).high]).toStrictEqual([
      1, 1,
    ]);
    expect(poissonExact(0).low).toBe(0);
  });

  it('holds the share it is about, inside 0 and 1, and is wider the surer it is to be', () => {
    fc.assert(
      fc.property(anyRate, (rate) => {
        for (const interval of [wilson, clopperPearson]) {
          const { low, high } = interval(rate);
          const surer = interval(rate, 0.99);
          const share = rate.count / rate.of;
          expect(low).toBeGreaterThanOrEqual(0);
          expect(high).toBeLessThanOrEqual(1);
          expect(low).toBeLessThanOrEqual(share + 1e-12);
          expect(high).toBeGreaterThanOrEqual(share - 1e-12);
          expect(surer.low).toBeLessThanOrEqual(low ?? NaN);
          expect(surer.high).toBeGreaterThanOrEqual(high ?? NaN);
        }
      }),
    );
  });

  it('of those that fell short mirrors that of those that did not', () => {
    fc.assert(
      fc.property(anyRate, ({ count, of }) => {
        expect(wilson({ count, of }).low).toBeCloseTo(
          1 - (wilson({ count: of - count, of }).high ?? NaN),
          12,
        );
      }),
    );
  });
});
