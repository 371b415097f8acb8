import { changed, problemsOf, resolved, SMALL, DESIGN } from '../support/small-rulebook';

const O = 'operations.yaml';
const says = expect.stringContaining('can never apply');

describe('what no design could ever bring to bear is named when the rulebook is read', () => {
  it('an operation whose conditions exclude each other', () => {
    const files = changed(O, `when: { role: '"wet"' }`, `when: { role: 'not("wet","dry")' }`);
    expect(problemsOf(files)).toContainEqual({ file: O, row: 14, column: 'when', says });
  });

  it('a variant behind another that always goes before', () => {
    const files = changed(
      O,
      'soft: [wired]',
      `soft: [wired]\n  variants:\n    - { when: { wind: 'not("I")' }, station: final }\n    - { when: { wind: '"III"' }, station: shop }`,
    );
    expect(problemsOf(files)).toStrictEqual([{ file: O, row: 21, column: 'variants', says }]);
  });

  it('a value asked for only where its operation does not apply', () => {
    const files = changed(O, '  lots: [cable]\n', `  lots: [cable]\n  when: { wind: '"I"' }\n`);
    expect(problemsOf(files).map(({ file, row }) => [file, row])).toStrictEqual([
      ['values.csv', 4],
      ['values.csv', 5],
    ]);
  });

  it('a cover over what is never there together with it', () => {
    const files = changed(O, '  hard: [framed]\n', `  hard: [framed]\n  when: { role: '"dry"' }\n`);
    expect(problemsOf(files)).toStrictEqual([{ file: 'covers.csv', row: 3, column: null, says }]);
  });

  it('but not a row without conditions that others leave nothing to: it is there for a value to come', () => {
    const files = changed(
      'values.csv',
      '<= 16,-,-,-,hold,entry,-,always,1,published,3280.305,yes,"""III"""',
      '<= 16,-,-,-,hold,entry,-,always,1,published,3280.305,yes,"""I"",""II"",""III"""',
    );
    expect(problemsOf(files)).toStrictEqual([]);
    expect(resolved(files, DESIGN).operations['wired']?.values[1]?.required).toBe('<= 16');
  });

  it('all of them at once, with every other complaint', () => {
    const files = changed(
      'values.csv',
      '>= 3',
      'three',
      changed(O, '  hard: [framed]\n', `  hard: [framed]\n  when: { role: '"dry"' }\n`, SMALL),
    );
    expect(problemsOf(files).map(({ file }) => file)).toStrictEqual(['values.csv', 'covers.csv']);
  });
});
