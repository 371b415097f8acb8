import type { Design } from '@libs/judge';
import { passes } from '@libs/judge';
import { compileCell, resolvePlan } from '@libs/rulebook';
import fc from 'fast-check';
import { problemsOf, read, sha256Hex, SMALL } from '../support/small-rulebook';

const V = 'values.csv';

/**
 * Goal: what is required of a design is what the most specific matching row says; where two such rows disagree for
 * a design, or a row could never be the most specific, the rulebook is refused, and nothing else is.
 * Method: random tables over three attributes, one of them a number, checked design by design by brute force.
 */
const DOMAINS = {
  wind: ['I', 'II', 'III'],
  role: ['wet', 'dry'],
  sections: ['1', '2'],
} as const;
const windCell = fc.constantFrom('-', '-', '"I"', '"II","III"', 'not("III")', '"III"');
const roleCell = fc.constantFrom('-', '-', '"wet"', 'not("wet")');
const sectionsCell = fc.constantFrom('-', '-', '>= 2', '[1..2)', '1,2');
const anyRow = fc.record({
  cells: fc.record({ wind: windCell, role: roleCell, sections: sectionsCell }),
  limit: fc.constantFrom('12', '16', '24'),
});
type Row = { readonly cells: { readonly [attribute: string]: string }; readonly limit: string };

const HEADER =
  'operation,characteristic,en,es,kind,unit,required,as_design,relation,choices,grade,from,lot_kind,asked,worst_of,source_kind,source,on,wind,role,sections';
const quoted = (cell = ''): string => `"${cell.replaceAll('"', '""')}"`;
const tableOf = (rows: readonly Row[]): string =>
  [
    HEADER,
    ...rows.map(
      ({ cells, limit }) =>
        `wired,spacing,S,S,measure,[in_i],<= ${limit},-,-,-,hold,entry,-,always,1,practice,p,yes,${quoted(cells['wind'])},${quoted(cells['role'])},${quoted(cells['sections'])}`,
    ),
  ].join('\n');

const designs: readonly Design[] = DOMAINS.wind.flatMap((wind) =>
  DOMAINS.role.flatMap((role) => DOMAINS.sections.map((sections) => ({ wind, role, sections, nails: '7' }))),
);

const isMet = (cell: string, given: string): boolean => {
  const compiled = compileCell(cell);
  if (!compiled.ok) throw new Error(compiled.says);
  return passes(compiled.test, given, null, null);
};
const matching = (rows: readonly Row[], design: Design): readonly Row[] => {
  const all = rows.filter(({ cells }) =>
    Object.entries(cells).every(([attribute, cell]) => isMet(cell, design[attribute] ?? '')),
  );
  const specificity = (row: Row): number => Object.values(row.cells).filter((cell) => cell !== '-').length;
  const most = Math.max(...all.map(specificity));
  return all.filter((row) => specificity(row) === most);
};

const specificityOf = ({ cells }: Row): number => Object.values(cells).filter((cell) => cell !== '-').length;

/** A row with conditions, and a more specific one for every design it speaks of. */
const neverApply = (rows: readonly Row[]): readonly number[] =>
  rows.flatMap((row, at) => {
    const applies = designs.some((design) => {
      const most = Math.max(0, ...matching(rows, design).map(specificityOf));
      return matching([row], design).length > 0 && specificityOf(row) >= most;
    });
    return applies || specificityOf(row) === 0 ? [] : [at + 2];
  });

describe('a decision table, by brute force over every design', () => {
  it('is refused exactly where two most specific rows disagree or one never applies, else requires what they say', () => {
    const seen = { refused: 0, dead: 0, resolved: 0 };
    fc.assert(
      fc.property(fc.array(anyRow, { minLength: 1, maxLength: 5 }), (rows) => {
        const files = { ...SMALL, [V]: tableOf(rows) };
        const clashes = designs.some(
          (design) => new Set(matching(rows, design).map(({ limit }) => limit)).size > 1,
        );
        const problems = problemsOf(files);
        const dead = neverApply(rows);
        expect(problems.some(({ says }) => says.startsWith('disagrees'))).toBe(clashes);
        expect(
          problems.filter(({ says }) => says.startsWith('can never')).map(({ row }) => row),
        ).toStrictEqual(dead);
        seen.dead += dead.length;
        if (clashes || dead.length > 0) return void (seen.refused += 1);
        expect(problems).toStrictEqual([]);

        const rulebook = read(files);
        for (const design of designs) {
          const answer = resolvePlan(rulebook, 1, design, sha256Hex);
          if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
          const [best] = matching(rows, design);
          expect(answer.plan.operations['wired']?.values.map(({ required }) => required)).toStrictEqual(
            best === undefined ? [] : [`<= ${best.limit}`],
          );
          seen.resolved += 1;
        }
      }),
      { numRuns: 200 },
    );
    expect(seen.refused).toBeGreaterThan(10);
    expect(seen.dead).toBeGreaterThan(3);
    expect(seen.resolved).toBeGreaterThan(100);
  });
});
