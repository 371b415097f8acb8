import { clopperPearson, poissonExact, wilson } from '@libs/quality';
import { expectAsPrinted, expectExact, referenceCase } from '../support/reference-cases';

type Pair = readonly [number, number];
type Newcombe = {
  readonly input: { readonly x: number; readonly n: number };
  readonly published: { readonly wilson_method_3: Pair; readonly clopper_pearson_method_5: Pair };
  readonly computed: {
    readonly values: {
      readonly wilson: Pair;
      readonly clopper_pearson: Pair;
      readonly wilson_90: Pair;
      readonly wilson_99: Pair;
    };
  };
};

const newcombe = (id: string): Newcombe => referenceCase('proportion-intervals', id);

describe('Newcombe 1998, Statistics in Medicine 17:857-872, Table I', () => {
  it.each([
    ['81 of 263', 'wilson.newcombe-81-263'],
    ['15 of 148', 'wilson.newcombe-15-148'],
    ['0 of 20', 'wilson.newcombe-0-20'],
    ['1 of 29', 'wilson.newcombe-1-29'],
  ])('%s has the interval printed there by score (method 3) and exact (method 5)', (_counts, id) => {
    const { input, published, computed } = newcombe(id);
    const rate = { count: input.x, of: input.n };

    const bounds = [
      [wilson(rate), published.wilson_method_3, computed.values.wilson],
      [clopperPearson(rate), published.clopper_pearson_method_5, computed.values.clopper_pearson],
    ] as const;
    for (const [interval, printed, exact] of bounds) {
      expectAsPrinted(interval.low, printed[0], 4);
      expectAsPrinted(interval.high, printed[1], 4);
      expectExact(interval.low, exact[0]);
      expectExact(interval.high, exact[1]);
    }
  });

  it.each([0.9, 0.99])('81 of 263 has the score interval R gives at confidence %d', (confidence) => {
    const { input, computed } = newcombe('wilson.newcombe-81-263');
    const expected = confidence === 0.9 ? computed.values.wilson_90 : computed.values.wilson_99;
    const interval = wilson({ count: input.x, of: input.n }, confidence);
    expectExact(interval.low, expected[0]);
    expectExact(interval.high, expected[1]);
  });
});

describe('Garwood 1936, Biometrika 28:437-442 (figures from memory, recomputed in R)', () => {
  const garwood: {
    readonly computed: {
      readonly values: { readonly intervals: readonly { x: number; lower: number; upper: number }[] };
    };
  } = referenceCase('proportion-intervals', 'poisson-ci.garwood');

  it.each(garwood.computed.values.intervals)('a count of $x lies between $lower and $upper', (row) => {
    const interval = poissonExact(row.x);
    expectExact(interval.low, row.lower);
    expectExact(interval.high, row.upper);
  });

  it('prints as tabulated for 0, 1 and 10', () => {
    expectAsPrinted(poissonExact(0).high, 3.689, 3);
    expectAsPrinted(poissonExact(1).low, 0.0253, 4);
    expectAsPrinted(poissonExact(1).high, 5.572, 3);
    expectAsPrinted(poissonExact(10).low, 4.795, 3);
    expectAsPrinted(poissonExact(10).high, 18.39, 2);
  });
});
