import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { csvOf } from '@libs/packet';

type Vectors = {
  readonly textCells: readonly { readonly cell: string; readonly field: string }[];
  readonly numberCells: readonly { readonly value: number; readonly field: string }[];
};
const vectors = JSON.parse(readFileSync(join(__dirname, 'cases', 'csv-vectors.json'), 'utf8')) as Vectors;

const written = (cell: string | number): string =>
  Buffer.from(csvOf({ columns: ['a', 'b'], rows: [[cell, 'z']] })).toString('utf8');

/** RFC 4180, section 2; OWASP ASVS 5.0, requirement 1.2.10. */
describe('a CSV of ours', () => {
  it.each(vectors.textCells)(
    'writes the text $cell as the standard has it, and never as a formula',
    (given) => {
      expect(written(given.cell)).toBe(`a,b\r\n${given.field},z\r\n`);
    },
  );

  it.each(vectors.numberCells)('leaves the number $value a number', ({ value, field }) => {
    expect(written(value)).toBe(`a,b\r\n${field},z\r\n`);
  });
});
