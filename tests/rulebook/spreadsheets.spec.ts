import type { RulebookFiles } from '@libs/rulebook';
import { problemsOf, read, SMALL } from '../support/small-rulebook';

/** Goal: a rulebook that went through a spreadsheet means what it meant before, or says where it does not. */
const everyFile = (change: (text: string, name: string) => string): RulebookFiles =>
  Object.fromEntries(Object.entries(SMALL).map(([name, text]) => [name, change(text, name)]));

const { body: _plain, ...plain } = read();

/** Cells with a semicolon, a comma or a quote are quoted; the small rulebook has no line breaks within cells. */
const bySemicolon = (text: string): string =>
  text
    .split('\n')
    .map((line) =>
      (line.match(/("(?:[^"]|"")*"|[^,]*)(,|$)/g) ?? [])
        .slice(0, line.endsWith(',') ? undefined : -1)
        .map((cell) => cell.replace(/,$/, ''))
        .join(';'),
    )
    .join('\n');

const onlyTables = (change: (text: string) => string): RulebookFiles =>
  everyFile((text, name) => (name.endsWith('.csv') ? change(text) : text));

describe('a rulebook saved by a spreadsheet or an editor', () => {
  it.each([
    ['with a byte-order mark', everyFile((text) => `\uFEFF${text}`)],
    ['with Windows line ends', everyFile((text) => text.replaceAll('\n', '\r\n'))],
    ['with both', everyFile((text) => `\uFEFF${text.replaceAll('\n', '\r\n')}`)],
    ['with semicolons between its cells', onlyTables(bySemicolon)],
    [
      'with semicolons, a mark and Windows line ends',
      onlyTables((text) => `\uFEFF${bySemicolon(text).replaceAll('\n', '\r\n')}`),
    ],
    ['with empty lines at its end', everyFile((text) => `${text}\n\n`)],
    [
      'with rows of empty cells at its end',
      onlyTables((text) => `${text}${','.repeat(text.split('\n')[0]?.split(',').length ?? 1).slice(1)}\n`),
    ],
  ])('reads the same %s', (_how, files) => {
    const { body: _body, ...rest } = read(files);
    expect(rest).toStrictEqual(plain);
  });

  it('means the same, row by row, with semicolons', () => {
    expect(read(onlyTables(bySemicolon)).body.values).toStrictEqual(read().body.values);
  });

  it('is told of a decimal comma, which would read as a list of two numbers', () => {
    const files = onlyTables((text) => bySemicolon(text).replace('>= 1.25', '>= 1,25'));
    expect(problemsOf(files)).toStrictEqual([
      {
        file: 'values.csv',
        row: 2,
        column: 'required',
        says: '`>= 1,25`: write a decimal with a point, a list with a space after its comma',
      },
    ]);
  });

  it('may have a list with a space after its comma all the same', () => {
    const files = onlyTables((text) => bySemicolon(text).replace('>= 1.25', '1, 2'));
    expect(problemsOf(files)).toStrictEqual([]);
  });
});
