import { passes } from '@libs/judge';
import { compileCell } from '@libs/rulebook';
import fc from 'fast-check';
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';

/**
 * Source: feelin 8.2.0, an interpreter of FEEL, the expression language of the OMG's Decision Model and Notation.
 * It is the oracle for what a cell of a decision table means, never the judge: it works in floats and takes
 * 40 to 100 us a test. Cells and values are thrown at both; the seed is printed when they part.
 */
type Case = readonly [cell: string, value: number | string | { readonly day: string }];
type Answer = boolean | null | 'error';

const ask = (cases: readonly Case[]): readonly Answer[] =>
  JSON.parse(
    execFileSync(process.execPath, [join(__dirname, '../support/feelin-oracle.mjs')], {
      input: JSON.stringify(cases),
      encoding: 'utf8',
      maxBuffer: 64 * 1024 * 1024,
    }),
  );

const ours = ([cell, value]: Case): boolean | 'error' => {
  const compiled = compileCell(cell);
  return compiled.ok
    ? passes(compiled.test, typeof value === 'object' ? value.day : String(value), null, null)
    : 'error';
};

/** Quarters are exact in floats too, so that the oracle is right about them. */
const quarter = fc.integer({ min: -40, max: 80 }).map((quarters) => quarters / 4);
const number = quarter.map(String);
const word = fc.constantFrom('I', 'II', 'III', 'none', 'natural', 'R-11', 'a "b"');
const comparison = fc
  .tuple(fc.constantFrom('<', '<=', '>', '>='), number)
  .map(([op, limit]) => `${op} ${limit}`);
const interval = fc
  .tuple(
    fc.constantFrom('[', '(', ']'),
    quarter,
    fc.integer({ min: 1, max: 40 }),
    fc.constantFrom(']', ')', '['),
  )
  .map(([open, from, size, close]) => `${open}${from}..${from + size / 4}${close}`);
const numeric = fc.oneof(comparison, interval, number);
const listOf = (part: fc.Arbitrary<string>): fc.Arbitrary<string> =>
  fc.array(part, { minLength: 1, maxLength: 4 }).map((parts) => parts.join(', '));
const negatable = (list: fc.Arbitrary<string>): fc.Arbitrary<string> =>
  fc.oneof(
    list,
    list.map((cells) => `not(${cells})`),
    fc.constant('-'),
  );
const textual = word.map((text) => JSON.stringify(text));

const numericCase: fc.Arbitrary<Case> = fc.tuple(negatable(listOf(numeric)), quarter);
const textualCase: fc.Arbitrary<Case> = fc.tuple(negatable(listOf(textual)), word);

/** Days from the end of one February to the start of the next March, so that leap days are among them. */
const day = fc
  .integer({ min: 0, max: 400 })
  .map((days) => new Date(Date.UTC(2027, 1, 20 + days)).toISOString().slice(0, 10));
const dayLiteral = day.map((text) => `date("${text}")`);
const dayComparison = fc
  .tuple(fc.constantFrom('<', '<=', '>', '>='), dayLiteral)
  .map(([op, limit]) => `${op} ${limit}`);
const dayInterval = fc
  .tuple(
    fc.constantFrom('[', '(', ']'),
    fc.uniqueArray(day, { minLength: 2, maxLength: 2 }),
    fc.constantFrom(']', ')', '['),
  )
  .map(([open, ends, close]) => {
    const [from, to] = [...ends].sort();
    return `${open}date("${from ?? ''}")..date("${to ?? ''}")${close}`;
  });
const dayCase: fc.Arbitrary<Case> = fc.tuple(
  negatable(listOf(fc.oneof(dayComparison, dayInterval, dayLiteral))),
  day.map((text) => ({ day: text })),
);

const SEED = Number(process.env['FEEL_SEED'] ?? 20_261_125);

describe(`cells of a decision table, against feelin (seed ${SEED})`, () => {
  it.each([
    ['numbers', numericCase],
    ['text', textualCase],
    ['days', dayCase],
  ] as const)('mean the same of %s', (_of, arbitrary) => {
    const cases = fc.sample(arbitrary, { numRuns: 3_000, seed: SEED });
    const parted = ask(cases).flatMap((theirs, index) => {
      const one = cases[index];
      return one === undefined || theirs === ours(one) ? [] : [{ one, theirs, ours: ours(one) }];
    });
    expect(parted).toStrictEqual([]);
  });

  it('both hold and fail often enough to tell them apart', () => {
    const answers = fc.sample(numericCase, { numRuns: 500, seed: SEED }).map(ours);
    expect(answers.filter((answer) => answer === true).length).toBeGreaterThan(100);
    expect(answers.filter((answer) => answer === false).length).toBeGreaterThan(100);
  });
});

/** Where the two part, and are meant to. */
describe('cells of a decision table, where floats or leniency would mislead', () => {
  it('find 0.3 met by 0.1 + 0.2 measured as 0.3, which a float sum is not', () => {
    expect(ask([['0.3', 0.1 + 0.2]])).toStrictEqual([false]);
    expect(ours(['0.3', '0.3'])).toBe(true);
  });

  it('tell a long decimal from its neighbour, which a float cannot', () => {
    const justShort = '0.37499999999999999999';
    expect(ask([['>= 0.375', Number(justShort)]])).toStrictEqual([true]);
    expect(ours(['>= 0.375', justShort])).toBe(false);
  });

  it('never find a comparison true of text, which feelin does of ">= 7" and "abc"', () => {
    expect(ask([['>= 7', 'abc']])).toStrictEqual([true]);
    expect(ours(['>= 7', 'abc'])).toBe(false);
    expect(ours(['not(>= 7)', 'abc'])).toBe(false);
  });

  it.each([
    '? > 5',
    'depth',
    'date("2026-02-30")',
    'date(2026, 1, 1)',
    'date and time("2026-01-01T00:00:00")',
    '1 + 2',
    'max(1, 2)',
    'null',
    '[1..]',
    '"a".."b"',
    '@"PT1H"',
  ])('are of no other form: %s is refused when the rulebook is read', (cell) => {
    expect(ours([cell, 5])).toBe('error');
  });
});
