import type { Design, PlannedValue } from '@libs/judge';
import { passes } from '@libs/judge';
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
