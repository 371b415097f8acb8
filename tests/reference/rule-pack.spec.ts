import type { Design, PlannedValue } from '@libs/judge';
import { judgeWork, passes } from '@libs/judge';
import { ROUTES } from '@libs/contracts';
import { entryOf, nothingDone } from '../support/judging';
import { demonstrationRulebook, planOf } from '../support/demonstration-rulebook';
import type { Figure } from './rule-figures';
import { PRACTICE, PUBLISHED, figuresOf } from './rule-figures';

/** The demonstration rulebook against the published texts. */
const rulebook = demonstrationRulebook();

const required = (change: Design, operation: string, characteristic: string): PlannedValue => {
  const found = planOf(rulebook, change).operations[operation]?.values.find(
    (value) => value.characteristic === characteristic,
  );
  if (found === undefined) throw new Error(`${operation} asks for no ${characteristic}`);
  return found;
};

const check = ({ design, operation, characteristic, unit, meets, misses }: Figure): PlannedValue => {
  const value = required(design, operation, characteristic);
  const isMet = (text: string): boolean => passes(value.test, text, unit, value.unit);
  expect({
    unit: value.unit,
    met: meets.filter(isMet),
    notMet: misses.filter((text) => !isMet(text)),
  }).toEqual({
    unit,
    met: meets,
    notMet: misses,
  });
  return value;
};

const titled = (table: string): readonly (readonly [string, string, Figure])[] =>
  figuresOf(table).map((figure) => [figure.section, figure.about, figure]);

describe('Published figures', () => {
  test.each(titled(PUBLISHED))('%s: %s', (section, _, figure) => {
    const { source } = check(figure);
    expect(source).toMatchObject({ kind: 'published', reference: expect.stringContaining(section) });
  });
});

describe('Trade facts (common practice, no published source)', () => {
  test.each(titled(PRACTICE))('%s: %s', (standing, _, figure) => {
    const { source } = check(figure);
    expect(source).toMatchObject({
      kind: standing,
      reference: expect.stringContaining('common practice, no published source'),
    });
  });
});

describe('Published figures that two readings give together', () => {
  const judged = (given: readonly (readonly [string, string, string])[]): readonly string[] => {
    const plan = planOf(rulebook, { dielectric: 'either' });
    const entry = entryOf('dielectric-tested', {
      values: given.map(([characteristic, value, unit]) => ({ characteristic, value, unit })),
    });
    return judgeWork(plan, nothingDone, entry).flatMap(({ rule, characteristic }) =>
      characteristic === 'path' ? [rule] : [],
    );
  };

  test.each([
    ['900', '60', true],
    ['1079', '60', true],
    ['899', '60', false],
    ['1000', '59.9', false],
    ['1079.5', '60', false],
    ['1080', '1', true],
    ['1250', '1', true],
    ['1251', '1', false],
    ['1080', '0.9', false],
    ['1000', '1', false],
  ] as const)(
    '3280.810(a): 900 to 1079 V for 60 s or 1080 to 1250 V for 1 s, and %s V for %s s',
    (volts, seconds, met) => {
      expect(
        judged([
          ['voltage', volts, 'V'],
          ['time', seconds, 's'],
        ]),
      ).toEqual(met ? [] : ['relation-not-met']);
    },
  );

  test('3280.810(a) in kilovolts and minutes is the same', () => {
    expect(
      judged([
        ['voltage', '0.95', 'kV'],
        ['time', '1', 'min'],
      ]),
    ).toEqual([]);
    expect(
      judged([
        ['voltage', '1.26', 'kV'],
        ['time', '1', 'min'],
      ]),
    ).toEqual(['relation-not-met']);
  });
});

describe('3280.11(b): a label number is three letters and six digits', () => {
  const isTaken = (number: string): boolean =>
    ROUTES.label.body.safeParse({ via: 'tablet', serial: 'T-1A', number }).success;

  test.each(['ABC000001', 'ABC 000 001', 'ABC 000001'])('%s is one', (number) => {
    expect(isTaken(number)).toBe(true);
  });
  test.each(['AB000001', 'ABCD00001', 'ABC00001', 'ABC0000001', 'abc000001', '123ABC456'])(
    '%s is none',
    (number) => {
      expect(isTaken(number)).toBe(false);
    },
  );
});

describe('What a text does not give is not claimed', () => {
  const values = (change: Design, operation: string): readonly string[] =>
    (planOf(rulebook, change).operations[operation]?.values ?? []).map(
      ({ characteristic }) => characteristic,
    );

  test('3280.305(e)(2) gives no strap spacing or base metal for wind zone I, and none is asked there', () => {
    expect(values({ wind: 'I' }, 'floor-strapped')).toEqual(
      expect.not.arrayContaining(['strap-spacing', 'strap-base-metal']),
    );
    expect(values({ wind: 'II' }, 'floor-strapped')).toEqual(
      expect.arrayContaining(['strap-spacing', 'strap-base-metal']),
    );
  });

  test('3280.504(a) lets zone 1 leave the ceiling retarder out, and none is asked there', () => {
    expect(values({ thermal: '1' }, 'ceiling-hung')).not.toContain('retarder');
  });

  test("3280.612(a) was amended unseen, so the water pressure is the plant's own and says it is invented", () => {
    const { source } = required({}, 'water-tested', 'pressure');
    expect(source).toMatchObject({ kind: 'design', reference: expect.stringContaining('invented') });
  });

  test('the lag figures are for wind zone I only; elsewhere the design gives the schedule', () => {
    expect(values({ wind: 'II', floor_lags: 'L-7' }, 'floor-lagged')).toEqual(['schedule']);
    expect(required({ wind: 'II', floor_lags: 'L-7' }, 'floor-lagged', 'schedule').required).toBe('"L-7"');
  });
});
