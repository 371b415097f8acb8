import { pareto, topAndRest } from '@libs/quality';
import { expectAsPrinted, expectExact, referenceCase } from '../support/reference-cases';

describe('purchasing errors, the example of pareto.chart in the R package qcc', () => {
  const purchasing: {
    readonly input: { readonly categories: Readonly<Record<string, number>> };
    readonly published: Readonly<Record<'order', readonly string[]>> &
      Readonly<Record<'percent' | 'cumulative_percent', readonly number[]>>;
    readonly computed: {
      readonly values: {
        readonly percent: readonly number[];
        readonly cumulative_percent: readonly number[];
        readonly vital_few_80_percent: readonly string[];
      };
    };
  } = referenceCase('pareto', 'pareto.qcc-purchasing');
  const tallies = Object.entries(purchasing.input.categories).map(([key, count]) => ({ key, count }));
  const { total, rows } = pareto(tallies);

  it('stands worst first with the shares printed there', () => {
    expect(total).toBe(300);
    expect(rows.map(({ key }) => key)).toStrictEqual(purchasing.published.order);
    for (const [index, row] of rows.entries()) {
      expectAsPrinted(row.share * 100, purchasing.published.percent[index] ?? NaN, 5);
      expectAsPrinted(row.cumulative * 100, purchasing.published.cumulative_percent[index] ?? NaN, 5);
      expectExact(row.share * 100, purchasing.computed.values.percent[index] ?? NaN);
    }
  });

  it('reaches 80 % exactly at the third category', () => {
    const few = rows.filter(({ cumulative, share }) => cumulative - share < 0.8).map(({ key }) => key);
    expect(few).toStrictEqual(purchasing.computed.values.vital_few_80_percent);
    expect(rows[2]?.cumulative).toBe(0.8);
  });
});

describe('ties and the rest (by hand)', () => {
  const ties: {
    readonly input: { readonly categories: readonly { readonly code: string; readonly count: number }[] };
    readonly computed: {
      readonly values: {
        readonly order: readonly string[];
        readonly cumulative_percent: readonly number[];
        readonly top3_plus_other: readonly { readonly code: string; readonly count: number }[];
      };
    };
  } = referenceCase('pareto', 'pareto.ties-and-other');
  const { rows } = pareto(ties.input.categories.map(({ code, count }) => ({ key: code, count })));

  it('puts equal counts in the order of their codes', () => {
    expect(rows.map(({ key }) => key)).toStrictEqual(ties.computed.values.order);
    for (const [index, row] of rows.entries()) {
      expectExact(row.cumulative * 100, ties.computed.values.cumulative_percent[index] ?? NaN);
    }
  });

  it('keeps the rest together after the first three', () => {
    const { top, rest } = topAndRest(rows, 3);
    const expected = ties.computed.values.top3_plus_other;
    expect([...top.map(({ count }) => count), rest]).toStrictEqual(expected.map(({ count }) => count));
  });

  it('has no shares when nothing was counted', () => {
    expect(pareto([{ key: 'D05', count: 0 }])).toStrictEqual({
      total: 0,
      rows: [{ key: 'D05', count: 0, share: 0, cumulative: 0 }],
    });
  });
});
