import { passes } from '@libs/judge';
import { compileCell } from '@libs/rulebook';

/**
 * Source: OMG Decision Model and Notation 1.3, 10.3.2.7 (ranges) and grammar rules 7 to 18 (unary tests): what each
 * form of a cell means at, below and above its ends. Against feelin, over random cells: tests/reference/feel.spec.ts.
 */
const met = (cell: string, value: string): boolean | string => {
  const compiled = compileCell(cell);
  return compiled.ok ? passes(compiled.test, value, null, null) : 'refused';
};

describe('a cell', () => {
  it.each([
    ['< 7', '6.9', true],
    ['< 7', '7', false],
    ['<= 7', '7', true],
    ['<= 7', '7.01', false],
    ['> 7', '7.01', true],
    ['> 7', '7', false],
    ['>= 7', '7', true],
    ['>= 7', '6.99', false],
    ['7', '7.0', true],
    ['7', '7.1', false],
    ['-3', '-3', true],
    ['[10..14]', '10', true],
    ['[10..14]', '14', true],
    ['[10..14]', '9.9', false],
    ['[10..14]', '14.1', false],
    ['(10..14]', '10', false],
    ['(10..14]', '14', true],
    [']10..14]', '10', false],
    ['[10..14)', '14', false],
    ['[10..14[', '14', false],
    ['[10..14[', '10', true],
    ['[7..7]', '7', true],
    ['"I","II"', 'II', true],
    ['"I","II"', 'III', false],
    ['not("none")', 'lp', true],
    ['not("none")', 'none', false],
    ['not(1, [3..4])', '2', true],
    ['not(1, [3..4])', '4', false],
    ['1, > 5', '6', true],
    ['1, > 5', '3', false],
    ['true', 'yes', true],
    ['true', 'no', false],
    ['false', 'no', true],
    ['false', 'false', true],
    ['-', 'anything', true],
    ['', 'anything', true],
    ['  >=  7  ', '7', true],
    ['"a \\"b\\""', 'a "b"', true],
    ['"tab\\there"', 'tab\there', true],
    ['"line\\nhere"', 'line\nhere', true],
    ['date("2026-05-01")', '2026-05-01', true],
    ['@"2026-05-01"', '2026-05-02', false],
    ['>= date("2026-05-01")', '2026-05-01', true],
    ['< date("2026-05-01")', '2026-05-01', false],
    ['> date("2026-05-01")', '2026-05-02', true],
    ['<= date( "2026-05-01" )', '2026-05-02', false],
    ['[date("2026-05-01")..date("2026-05-31")]', '2026-05-31', true],
    ['[date("2026-05-01")..date("2026-05-31"))', '2026-05-31', false],
    ['(date("2026-05-01")..date("2026-05-31")]', '2026-05-01', false],
    ['[@"2026-05-01"..@"2026-05-31"]', '2026-04-30', false],
    ['date("2028-02-29")', '2028-02-29', true],
    ['>= date("2026-05-01")', '7', false],
    ['>= date("2026-05-01")', '2026-02-30', false],
  ] as const)('%s of %s is %s', (cell, value, expected) => {
    expect(met(cell, value)).toBe(expected);
  });

  it.each([
    '7 8',
    '>= seven',
    '>=',
    '7 >=',
    '= 7',
    '.5',
    '07',
    '7.',
    '1,25,',
    ', 1',
    '[1..2',
    '1..2]',
    '[1..2..3]',
    '{1..2}',
    '[2..1]',
    '(7..7]',
    '[7..7)',
    'not(2..1)',
    'not([2..1])',
    '1, [2..1]',
    'not',
    'not 7',
    'not(7',
    'not()',
    'not(not(7))',
    '"open',
    "'single'",
    'truely',
    'nothing',
    '"a" "b"',
    '> "a"',
    '["a".."b"]',
    '[1..date("2026-05-01")]',
    'date("2026-02-30")',
    'date("2027-02-29")',
    'date("2100-02-29")',
    'date("2026-04-31")',
    '> date("2026-04-31")',
    '[date("2026-05-31")..date("2026-05-01")]',
    '(date("2026-05-01")..date("2026-05-01")]',
    'date(2026)',
    'depth',
    '? > 5',
    '1 + 2',
  ])('%s is refused, and says what a cell may be', (cell) => {
    const compiled = compileCell(cell);
    expect(compiled).toMatchObject({ ok: false });
    expect(compiled.ok ? '' : compiled.says).toContain(`\`${cell}\` is `);
  });
});
