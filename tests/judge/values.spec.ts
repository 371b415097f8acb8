import type { Entry, PlannedValue, RecordedValue } from '@libs/judge';
import { judgeWork, passes } from '@libs/judge';
import fc from 'fast-check';
import { entryOf, nothingDone, operation, planOfOperations, SOURCE, value } from '../support/judging';

const tell = (
  values: readonly PlannedValue[],
  given: readonly RecordedValue[],
  change: Partial<Entry> = {},
) =>
  judgeWork(
    planOfOperations(operation('wired', { values })),
    nothingDone,
    entryOf('wired', { values: given, ...change }),
  );
const inches = (characteristic: string, text: string, place?: string): RecordedValue => ({
  characteristic,
  value: text,
  unit: '[in_i]',
  ...(place === undefined ? {} : { place }),
});
const plain = (characteristic: string, text: string): RecordedValue => ({
  characteristic,
  value: text,
  unit: null,
});

describe('a measured value', () => {
  const edge = value('edge');

  it('within its limit is nothing to speak of', () => {
    expect(tell([edge], [inches('edge', '1.25')])).toStrictEqual([]);
  });

  it('out of its limit is a nonconformance, with what was required and recorded, and on whose authority', () => {
    expect(tell([edge], [inches('edge', '1.2499')])).toStrictEqual([
      {
        rule: 'value-out-of-limits',
        grade: 'hold',
        class: 'nonconformance',
        operation: 'wired',
        station: 'rough-in',
        characteristic: 'edge',
        required: '>= 1.25',
        recorded: '1.2499',
        unit: '[in_i]',
        source: SOURCE,
      },
    ]);
  });

  it('in another unit of the same kind is converted, exactly', () => {
    expect(tell([edge], [{ characteristic: 'edge', value: '31.75', unit: 'mm' }])).toStrictEqual([]);
    expect(
      tell([edge], [{ characteristic: 'edge', value: '31.7499999999999999', unit: 'mm' }]),
    ).toMatchObject([{ rule: 'value-out-of-limits', recorded: '31.7499999999999999', unit: 'mm' }]);
  });

  it.each([
    ['a pressure', { characteristic: 'edge', value: '2', unit: '[psi]' }],
    ['a bare number', { characteristic: 'edge', value: '2', unit: null }],
    ['an unknown unit', { characteristic: 'edge', value: '2', unit: 'in' }],
    ['text', { characteristic: 'edge', value: 'about two', unit: '[in_i]' }],
  ])('given as %s is of the wrong kind, and not out of limits', (_what, given) => {
    expect(tell([edge], [given])).toMatchObject([
      { rule: 'value-of-wrong-kind', grade: 'refuse', class: 'record' },
    ]);
  });

  it('read at several places must pass at each; the worst is reported, and where', () => {
    const given = [
      inches('edge', '1.1', 'kitchen'),
      inches('edge', '1.3', 'hall'),
      inches('edge', '0.9', 'bath-1'),
    ];
    expect(tell([edge], given)).toMatchObject([{ recorded: '0.9', places: ['kitchen', 'bath-1'] }]);
  });

  it('above an upper limit is worst where it is highest, whatever the units', () => {
    const gap = value('gap', { test: { is: 'compare', op: '<=', number: '0.125' }, required: '<= 0.125' });
    const given = [
      inches('gap', '0.5'),
      { characteristic: 'gap', value: '20', unit: 'mm' },
      inches('gap', '0.2'),
    ];
    expect(tell([gap], given)).toMatchObject([{ recorded: '20', unit: 'mm' }]);
  });

  it('outside an interval is worst where it is furthest out, above or below', () => {
    const pressure = value('pressure', {
      unit: "[in_i'H2O]",
      test: { is: 'interval', from: '10', fromClosed: true, to: '14', toClosed: true },
    });
    const read = (text: string): RecordedValue => ({
      characteristic: 'pressure',
      value: text,
      unit: "[in_i'H2O]",
    });
    expect(tell([pressure], ['9', '17', '14'].map(read))).toMatchObject([{ recorded: '17' }]);
    expect(tell([pressure], ['5', '15'].map(read))).toMatchObject([{ recorded: '5' }]);
  });
});

describe('a value that is not given', () => {
  it.each([
    ['refuse', 'hold'],
    ['hold', 'hold'],
    ['note', 'note'],
  ] as const)('where it is graded %s, is a %s: the record is short, not the work', (grade, told) => {
    expect(tell([value('edge', { grade })], [])).toMatchObject([
      { rule: 'value-missing', grade: told, class: 'record', characteristic: 'edge', unit: '[in_i]' },
    ]);
  });

  it('is no matter where the thing may not occur at all', () => {
    expect(tell([value('hole', { asked: 'where-any' })], [])).toStrictEqual([]);
  });
});

describe('values that are no measures', () => {
  it.each([
    ['count', '2', true],
    ['count', '2.5', false],
    ['count', '-1', false],
    ['count', 'two', false],
    ['yes-no', 'yes', true],
    ['yes-no', 'Yes', false],
    ['date', '2026-03-14', true],
    ['date', '2026-13-14', false],
    ['text', 'Maker 12', true],
    ['text', '  ', false],
    ['choice', 'R-19', true],
  ] as const)('a %s may be %p: %p', (kind, text, isOne) => {
    const findings = tell(
      [value('it', { kind, unit: kind === 'count' ? '1' : null, test: { is: 'any' }, required: '' })],
      [plain('it', text)],
    );
    expect(findings.map(({ rule }) => rule)).toStrictEqual(isOne ? [] : ['value-of-wrong-kind']);
  });

  it('a yes that was required and is a no is a nonconformance', () => {
    const told = tell(
      [value('dry', { kind: 'yes-no', unit: null, test: { is: 'text', text: 'yes' } })],
      [plain('dry', 'no')],
    );
    expect(told).toMatchObject([{ rule: 'value-out-of-limits', recorded: 'no' }]);
  });

  it('a choice outside the list is still what was done: recorded, and out of limits', () => {
    const batt = value('batt', {
      kind: 'choice',
      unit: null,
      test: { is: 'text', text: 'R-19' },
      choices: ['R-11', 'R-19'],
    });
    expect(tell([batt], [plain('batt', 'R-13')])).toMatchObject([
      { rule: 'value-out-of-limits', recorded: 'R-13' },
    ]);
  });
});

describe('values filled in, never typed', () => {
  const width = value('width', {
    from: 'lot',
    lotKind: 'strap',
    test: { is: 'compare', op: '>=', number: '1.5' },
  });
  const lot = (text: string): Entry['lots'][number] => ({
    lot: 'L-7',
    kind: 'strap',
    usable: true,
    properties: [inches('width', text)],
  });

  it('come from the certificate of the lot', () => {
    expect(tell([width], [], { lots: [lot('1.5')] })).toStrictEqual([]);
    expect(tell([width], [], { lots: [lot('1.25')] })).toMatchObject([
      { rule: 'value-out-of-limits', recorded: '1.25' },
    ]);
  });

  it('are missing where no lot gives them, whatever was typed', () => {
    expect(tell([width], [inches('width', '1.5')])).toMatchObject([{ rule: 'value-missing' }]);
    expect(tell([width], [], { lots: [{ ...lot('1.5'), kind: 'nail' }] })).toMatchObject([
      { rule: 'value-missing' },
    ]);
  });

  it('must hold for both lots of a change-over', () => {
    expect(tell([width], [], { lots: [lot('1.5'), lot('1')] })).toMatchObject([{ recorded: '1' }]);
  });

  it('come from the record of the instrument', () => {
    const fine = value('resolution', {
      from: 'instrument',
      unit: '[psi]',
      test: { is: 'compare', op: '<=', number: '0.1' },
    });
    const instrument = (text: string): Entry['instrument'] => ({
      instrument: 'G-1',
      kind: 'gas-gauge',
      usable: true,
      properties: [{ characteristic: 'resolution', value: text, unit: '[psi]' }],
    });
    expect(tell([fine], [], { instrument: instrument('0.1') })).toStrictEqual([]);
    expect(tell([fine], [], { instrument: instrument('0.5') })).toMatchObject([
      { rule: 'value-out-of-limits' },
    ]);
    expect(tell([fine], [])).toMatchObject([{ rule: 'value-missing' }]);
  });
});

/** Decimals of up to nine places, as text: what a person or an instrument may enter. */
const decimal = fc
  .tuple(fc.bigInt({ min: -(10n ** 15n), max: 10n ** 15n }), fc.integer({ min: 0, max: 9 }))
  .map(([digits, places]) => {
    const size = String(digits < 0n ? -digits : digits).padStart(places + 1, '0');
    const text = places === 0 ? size : `${size.slice(0, -places)}.${size.slice(-places)}`;
    return { text: digits < 0n ? `-${text}` : text, digits, places };
  });

describe('comparison', () => {
  it('is that of the exact numbers, whatever their places (by whole numbers, scaled)', () => {
    fc.assert(
      fc.property(decimal, decimal, (a, b) => {
        const [x, y] = [a.digits * 10n ** BigInt(9 - a.places), b.digits * 10n ** BigInt(9 - b.places)];
        const says = (op: '<' | '<=' | '>' | '>=' | '='): boolean =>
          passes({ is: 'compare', op, number: b.text }, a.text, 'mm', 'mm');
        expect([says('<'), says('<='), says('='), says('>='), says('>')]).toStrictEqual([
          x < y,
          x <= y,
          x === y,
          x >= y,
          x > y,
        ]);
      }),
    );
  });

  it('does not change with the unit the value is told in', () => {
    fc.assert(
      fc.property(fc.bigInt({ min: -9_999_999n, max: 9_999_999n }), decimal, (hundredths, limit) => {
        const inchText = scaled(hundredths, 2);
        const mmText = scaled(hundredths * 254n, 3);
        const test = { is: 'compare', op: '>=', number: limit.text } as const;
        expect(passes(test, mmText, 'mm', '[in_i]')).toBe(passes(test, inchText, '[in_i]', '[in_i]'));
      }),
    );
  });
});

const scaled = (number: bigint, places: number): string => {
  const size = String(number < 0n ? -number : number).padStart(places + 1, '0');
  return `${number < 0n ? '-' : ''}${size.slice(0, -places)}.${size.slice(-places)}`;
};
