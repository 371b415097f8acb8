import { changed, DESIGN, problemsOf, resolved, SMALL } from '../support/small-rulebook';

const V = 'values.csv';

describe('several rows for one characteristic', () => {
  const required = (wind: string): string | undefined =>
    resolved(SMALL, { ...DESIGN, wind }).operations['wired']?.values.find(
      ({ characteristic }) => characteristic === 'spacing',
    )?.required;

  it('the most specific that matches is required', () => {
    expect(required('I')).toBe('<= 24');
    expect(required('III')).toBe('<= 16');
  });

  it('that overlap, are equally specific and disagree are an error when the rulebook is read', () => {
    const files = changed(
      V,
      '<= 24,-,-,-,hold,entry,-,always,1,practice,practice,yes,-',
      '<= 24,-,-,-,hold,entry,-,always,1,practice,practice,yes,"not(""I"")"',
    );
    expect(problemsOf(files)).toStrictEqual([
      {
        file: V,
        row: 4,
        column: 'characteristic',
        says: 'disagrees with row 3, as specific, where wind is III',
      },
    ]);
  });

  it('that say the same may overlap, whatever their source', () => {
    const files = changed(
      V,
      '<= 24,-,-,-,hold,entry,-,always,1,practice,practice,yes,-',
      '<= 16,-,-,-,hold,entry,-,always,1,practice,practice,yes,"not(""I"")"',
    );
    expect(problemsOf(files)).toStrictEqual([]);
  });

  it('that never meet do not disagree', () => {
    const files = changed(
      V,
      '<= 24,-,-,-,hold,entry,-,always,1,practice,practice,yes,-',
      '<= 24,-,-,-,hold,entry,-,always,1,practice,practice,yes,"""I"",""II"""',
    );
    expect(problemsOf(files)).toStrictEqual([]);
  });

  it('that meet only in designs the operation does not apply to do not disagree', () => {
    const overlapping = changed(
      V,
      '<= 24,-,-,-,hold,entry,-,always,1,practice,practice,yes,-',
      '<= 24,-,-,-,hold,entry,-,always,1,practice,practice,yes,"""II"",""III"""',
      changed(V, '3280.305,yes,"""III"""', '3280.305,yes,"""I"",""III"""'),
    );
    expect(problemsOf(overlapping)).toHaveLength(1);
    const files = changed(
      'operations.yaml',
      '  lots: [cable]\n',
      `  lots: [cable]\n  when: { wind: '"I","II"' }\n`,
      overlapping,
    );
    expect(problemsOf(files)).toStrictEqual([]);
  });

  it('switched off are not required, and disagree with nobody', () => {
    expect(resolved().operations['gassed']?.values.map(({ characteristic }) => characteristic)).toStrictEqual(
      ['start', 'end', 'drop'],
    );
  });
});
