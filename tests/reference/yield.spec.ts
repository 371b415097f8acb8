import {
  defectsPerMillion,
  defectsPerUnit,
  firstPassYield,
  firstResultYield,
  firstTimeYield,
  normalizedYield,
  rolledYield,
  share,
  sigmaLevel,
  throughputYield,
} from '@libs/quality';
import { expectAsPrinted, expectExact, referenceCase } from '../support/reference-cases';

describe('the four-step line of the encyclopaedia article "First-pass yield"', () => {
  const line: {
    readonly input: {
      readonly steps: readonly {
        readonly in: number;
        readonly reworked: number;
        readonly good_out: number;
      }[];
    };
    readonly published: {
      readonly fty: readonly number[];
      readonly fpy: readonly number[];
      readonly rty: number;
    };
    readonly computed: {
      readonly values: {
        readonly fty: readonly number[];
        readonly fpy: readonly number[];
        readonly rty: number;
        readonly normalized_yield: number;
      };
    };
  } = referenceCase('yield-sigma', 'yield.four-step');
  const steps = line.input.steps.map((step) => ({
    in: step.in,
    goodOut: step.good_out,
    reworked: step.reworked,
  }));

  it('has the first-time and first-pass yields printed for each step', () => {
    for (const [index, step] of steps.entries()) {
      expectAsPrinted(share(firstTimeYield(step)), line.published.fty[index] ?? NaN, 4);
      expectAsPrinted(share(firstPassYield(step)), line.published.fpy[index] ?? NaN, 4);
      expectExact(share(firstTimeYield(step)), line.computed.values.fty[index] ?? NaN);
      expectExact(share(firstPassYield(step)), line.computed.values.fpy[index] ?? NaN);
    }
  });

  it('rolls through to 0.5075', () => {
    const rolled = rolledYield(steps.map(firstPassYield));
    expectAsPrinted(rolled, line.published.rty, 4);
    expectExact(rolled, line.computed.values.rty);
    expectExact(normalizedYield(rolled ?? NaN, 4), line.computed.values.normalized_yield);
  });
});

describe('a station log with retests (counted by hand)', () => {
  const log: {
    readonly input: { readonly attempts_in_time_order: readonly { readonly results: readonly string[] }[] };
    readonly computed: {
      readonly values: {
        readonly first_pass_yield: number;
        readonly passes_over_attempts_WRONG_as_fpy: number;
      };
    };
  } = referenceCase('yield-sigma', 'yield.test-log-first-result');

  it('counts each unit once, by its first result, never passes over attempts', () => {
    const results = log.input.attempts_in_time_order.map((unit) =>
      unit.results.map((result) => result === 'pass'),
    );
    const yielded = share(firstResultYield(results));
    expectExact(yielded, log.computed.values.first_pass_yield);
    expect(yielded).not.toBeCloseTo(log.computed.values.passes_over_attempts_WRONG_as_fpy, 3);
  });
});

describe('defects per unit and per million (definitions as in ISO 13053-1:2011, recomputed in scipy)', () => {
  const basic: {
    readonly input: {
      readonly units: number;
      readonly opportunities_per_unit: number;
      readonly defects: number;
    };
    readonly computed: { readonly values: Readonly<Record<string, number>> };
  } = referenceCase('yield-sigma', 'dpmo.basic');

  it('counts 47 defects on 500 units of 12 opportunities', () => {
    const { units, opportunities_per_unit: opportunities, defects } = basic.input;
    const expected = basic.computed.values;
    expectExact(defectsPerUnit(defects, units), expected['dpu'] ?? NaN);
    const perMillion = defectsPerMillion(defects, units, opportunities);
    expectExact(perMillion, expected['dpmo'] ?? NaN);
    expectExact(sigmaLevel(perMillion ?? NaN), expected['sigma_level_with_1.5_shift'] ?? NaN);
    expectExact(throughputYield(0.094), expected['throughput_yield_poisson'] ?? NaN);
  });

  it('finds the customary sigma levels in the one-tail conversion table', () => {
    const table: {
      readonly computed: {
        readonly values: {
          readonly rows: readonly { readonly sigma_level: number; readonly dpmo_one_tail: number }[];
        };
      };
    } = referenceCase('yield-sigma', 'sigma.table-1.5-shift');
    for (const row of table.computed.values.rows) expectExact(sigmaLevel(row.dpmo_one_tail), row.sigma_level);
  });

  it('does not estimate a sigma level from no defects', () => {
    expect(sigmaLevel(0)).toBeNull();
  });
});

describe('the Poisson yield model (Harry & Schroeder 2000, recomputed)', () => {
  it('rolls the throughput yields of four steps through to exp(-0.28)', () => {
    const model: {
      readonly input: { readonly dpu_per_step: readonly number[] };
      readonly computed: {
        readonly values: { readonly throughput_yields: readonly number[]; readonly rty: number };
      };
    } = referenceCase('yield-sigma', 'rty.from-dpu');
    const yields = model.input.dpu_per_step.map(throughputYield);
    for (const [index, each] of yields.entries()) {
      expectExact(each, model.computed.values.throughput_yields[index] ?? NaN);
    }
    expectExact(rolledYield(yields.map((count) => ({ count, of: 1 }))), model.computed.values.rty);
  });
});

describe('ISO 22400-2:2014, first-pass yield GP over IP (definition from memory)', () => {
  it('is good parts at first pass over inspected parts', () => {
    const kpi: {
      readonly input: { readonly inspected_parts_IP: number; readonly good_parts_first_pass_GP: number };
      readonly computed: { readonly values: { readonly first_pass_yield_GP_over_IP: number } };
    } = referenceCase('yield-sigma', 'kpi.iso22400-2');
    const { inspected_parts_IP: inspected, good_parts_first_pass_GP: good } = kpi.input;
    const yielded = firstPassYield({ in: inspected, goodOut: inspected, reworked: inspected - good });
    expectExact(share(yielded), kpi.computed.values.first_pass_yield_GP_over_IP);
  });
});
