import type { PlannedValue, RecordedValue, Relation } from '@libs/judge';
import { judgeWork } from '@libs/judge';
import { entryOf, nothingDone, operation, planOfOperations, value } from '../support/judging';

const tell = (values: readonly PlannedValue[], given: readonly RecordedValue[]) =>
  judgeWork(
    planOfOperations(operation('wired', { values })),
    nothingDone,
    entryOf('wired', { values: given }),
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

describe('a relation between values (24 CFR 3280.305(g)(5): a hole is at most a third of the joist)', () => {
  const third: Relation = {
    left: [{ factor: '3', characteristic: 'hole' }],
    op: '<=',
    right: [{ factor: '1', characteristic: 'depth' }],
  };
  const rows = [
    value('hole', { test: { is: 'any' }, asked: 'where-any' }),
    value('depth', { test: { is: 'any' }, asked: 'where-any' }),
    value('hole-third', { kind: 'derived', unit: null, relation: third, required: '3 * hole <= depth' }),
  ];

  it('is compared by multiplication, so that rounding never refuses', () => {
    expect(tell(rows, [inches('hole', '2.416'), inches('depth', '7.248')])).toStrictEqual([]);
    expect(tell(rows, [inches('hole', '2.417'), inches('depth', '7.25')])).toMatchObject([
      {
        rule: 'relation-not-met',
        grade: 'hold',
        class: 'nonconformance',
        characteristic: 'hole-third',
        required: '3 * hole <= depth',
        recorded: 'hole 2.417 [in_i], depth 7.25 [in_i]',
      },
    ]);
  });

  it('holds between units', () => {
    expect(
      tell(rows, [{ characteristic: 'hole', value: '50.8', unit: 'mm' }, inches('depth', '6')]),
    ).toStrictEqual([]);
    expect(
      tell(rows, [{ characteristic: 'hole', value: '50.81', unit: 'mm' }, inches('depth', '6')]),
    ).toHaveLength(1);
  });

  it('is compared place by place where places are given', () => {
    const given = [
      inches('hole', '2', 'kitchen'),
      inches('depth', '6', 'kitchen'),
      inches('hole', '3', 'bath-1'),
      inches('depth', '9', 'bath-1'),
    ];
    expect(tell(rows, given)).toStrictEqual([]);
    expect(tell(rows, [...given, inches('hole', '2.5', 'kitchen')])).toMatchObject([{ places: ['kitchen'] }]);
  });

  it('holds for the worst of several readings', () => {
    expect(tell(rows, [inches('hole', '1'), inches('hole', '2.5'), inches('depth', '6')])).toHaveLength(1);
  });

  it('holds for the worst of several readings whichever side is to be the larger', () => {
    const larger: Relation = { left: third.right, op: '>=', right: third.left };
    const turned = rows.map((row) => (row.relation === undefined ? row : { ...row, relation: larger }));
    expect(tell(turned, [inches('hole', '2'), inches('depth', '9'), inches('depth', '5')])).toHaveLength(1);
    expect(tell(turned, [inches('hole', '2'), inches('depth', '9'), inches('depth', '6')])).toStrictEqual([]);
  });

  it('is not asked where there is no hole, and missed where only half of it is told', () => {
    expect(tell(rows, [])).toStrictEqual([]);
    expect(tell(rows, [inches('hole', '2')])).toMatchObject([
      { rule: 'value-missing', characteristic: 'depth' },
    ]);
  });

  it('is not judged from a value of the wrong kind', () => {
    const told = tell(rows, [plain('hole', '2'), inches('depth', '6')]);
    expect(told.map(({ rule }) => rule)).toStrictEqual(['value-of-wrong-kind']);
  });

  it('that asks for no loss at all finds the smallest', () => {
    const drop: Relation = {
      left: [
        { factor: '1', characteristic: 'start' },
        { factor: '-1', characteristic: 'end' },
      ],
      op: '=',
      right: [{ factor: '0', characteristic: null }],
    };
    const gauge = [
      value('start', { unit: '[psi]', test: { is: 'any' } }),
      value('end', { unit: '[psi]', test: { is: 'any' } }),
      value('drop', {
        kind: 'derived',
        unit: '[psi]',
        relation: drop,
        grade: 'refuse',
        required: 'start - end = 0',
      }),
    ];
    const psi = (characteristic: string, text: string): RecordedValue => ({
      characteristic,
      value: text,
      unit: '[psi]',
    });
    expect(tell(gauge, [psi('start', '3.1'), psi('end', '3.10')])).toStrictEqual([]);
    expect(tell(gauge, [psi('start', '3.1'), psi('end', '3.0999999999999999999')])).toMatchObject([
      { rule: 'relation-not-met', grade: 'refuse' },
    ]);
  });
});
