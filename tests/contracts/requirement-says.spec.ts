import { requirementSays, valueSays } from '@libs/contracts';

/** Wording is our own; the figures are those of the sections named, so that a slip in either shows. */
describe('A requirement in words', () => {
  /** Cell, unit, English, Spanish, where the figure comes from. */
  const cases: readonly (readonly [string, string | null, string, string, string])[] = [
    ['>= 7', '1', 'at least 7', 'al menos 7', 'strap nails (common practice, no published source)'],
    [
      '<= 36',
      '[in_i]',
      'at most 36 in',
      'cuando mucho 36 in',
      'lag spacing (common practice, no published source)',
    ],
    ['>= 1.25', '[in_i]', 'at least 1-1/4 in', 'al menos 1-1/4 in', 'NEC 300.4(A)(1)'],
    ['>= 0.0625', '[in_i]', 'at least 1/16 in', 'al menos 1/16 in', 'NEC 300.4(A)(2)'],
    ['>= 0.3125', '[in_i]', 'at least 5/16 in', 'al menos 5/16 in', '24 CFR 3280.305(h)'],
    [
      '>= 0.058',
      '[in_i]',
      'at least 0.058 in',
      'al menos 0.058 in',
      '24 CFR 3280.705(h)(1): no mark on a tape',
    ],
    ['[10..14]', "[in_i'H2O]", '10 to 14 in of water', 'de 10 a 14 in de agua', '24 CFR 3280.705(l)(8)(ii)'],
    ['[900..1079]', 'V', '900 to 1079 V', 'de 900 a 1079 V', '24 CFR 3280.810(a)'],
    ['<= 1', '[perm_us]', 'at most 1 perm', 'cuando mucho 1 perm', '24 CFR 3280.504(a)'],
    ['"R-19"', null, 'R-19', 'R-19', 'common practice, no published source'],
    ['"storm","insulating"', null, 'storm or insulating', 'storm o insulating', '24 CFR 3280.506(c)'],
    ['"yes"', null, 'yes', 'sí', 'a yes/no'],
    ['0', '1', 'none', 'ninguno', 'a count of nothing'],
    ['0', '[psi]', '0 psi', '0 psi', 'a measure of nothing keeps its unit'],
    [
      'not("none")',
      null,
      'anything but none',
      'lo que sea menos none',
      'FEEL unary test (OMG DMN 1.3, 7.3.3)',
    ],
    [
      ']5..10]',
      'V',
      'more than 5 V, at most 10 V',
      'más de 5 V, cuando mucho 10 V',
      'FEEL interval, open start',
    ],
    [
      '3 * hole <= hole-joist-depth',
      null,
      'worked out from the readings',
      'se calcula con las lecturas',
      '24 CFR 3280.305(g)(5)',
    ],
    ['', null, 'any value', 'cualquier valor', 'anything'],
    ['-', null, 'any value', 'cualquier valor', 'anything'],
  ];

  test.each(cases)('%s in %s is "%s", in Spanish "%s" (%s)', (required, unit, says, dice) => {
    expect(requirementSays(required, unit)).toEqual({ en: says, es: dice });
  });

  test.each([
    ['36.5', '[in_i]', '36-1/2 in'],
    ['1.75', 'mm', '1.75 mm'],
    ['0.0179', '[in_i]', '0.0179 in'],
    ['no', null, 'no'],
    ['2x6', null, '2x6'],
    ['', null, 'nothing'],
  ])('%s in %s is shown as %s', (value, unit, says) => {
    expect(valueSays(value, unit).en).toBe(says);
  });
});
