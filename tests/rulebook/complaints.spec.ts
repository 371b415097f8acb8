import type { RulebookFiles } from '@libs/rulebook';
import { CSV_FAULTS } from '../support/rulebook-faults-csv';
import { YAML_FAULTS } from '../support/rulebook-faults-yaml';
import { changed, problemsOf, SMALL } from '../support/small-rulebook';

const P = 'plant.yaml';
const O = 'operations.yaml';
const V = 'values.csv';
const C = 'covers.csv';

describe('a rulebook without fault', () => {
  it('draws no complaint', () => {
    expect(problemsOf(SMALL)).toStrictEqual([]);
  });

  it('needs no more than a plant and its operations', () => {
    const files = changed(
      P,
      ', lots: [cable]',
      '',
      changed(O, '  lots: [cable]\n', '', changed(O, '  instrument: gauge\n', '')),
    );
    expect(problemsOf({ [P]: files[P] ?? '', [O]: files[O] ?? '' })).toStrictEqual([]);
  });
});

describe('every complaint names the file, the row and the column', () => {
  it.each([...YAML_FAULTS, ...CSV_FAULTS])(
    'of %s',
    (_what, [file, from, to], [atFile, row, column], says) => {
      const problems = problemsOf(changed(file, from, to));
      const found = problems.filter((one) => one.file === atFile && one.row === row && one.column === column);
      expect({ found: found.map((one) => one.says), problems }).toStrictEqual({
        found: expect.arrayContaining([expect.stringContaining(says)]),
        problems,
      });
    },
  );

  it('of a file that belongs to no rulebook', () => {
    expect(problemsOf({ ...SMALL, 'notes.txt': '' })).toStrictEqual([
      { file: 'notes.txt', row: 1, column: null, says: 'is no file of a rulebook' },
    ]);
  });

  it('of a rulebook with no plant or no operations', () => {
    const { [P]: _plant, [O]: _operations, ...rest } = SMALL;
    expect(problemsOf(rest).map(({ file }) => file)).toStrictEqual([P, O]);
  });

  it('of rows behind a cell that goes over two lines: rows are counted, not lines', () => {
    const files = changed(V, 'published,NEC', 'published,"NEC\n300.4"', changed(V, '>= 3', 'three'));
    expect(problemsOf(files)).toMatchObject([{ file: V, row: 6, column: 'required' }]);
  });

  it('and they all come at once', () => {
    const files = [
      [O, 'station: walls', 'station: wall'],
      [V, '>= 1.25', 'wide'],
      [C, 'boarded,piped', 'boarded,pipe'],
      ['faults.csv', 'wired:a', 'wired'],
    ].reduce<RulebookFiles>((all, [file = '', from = '', to = '']) => changed(file, from, to, all), SMALL);
    expect(new Set(problemsOf(files).map(({ file }) => file))).toStrictEqual(
      new Set([O, V, C, 'faults.csv']),
    );
  });
});
