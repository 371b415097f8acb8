import { csvOf } from '../../charts/csv';
import type { Files } from '../rulebook/draft';
import type { Claim } from './claim';

const VALUES = 'values.csv';

/**
 * The rulebook's files with one check more on the operation that was the cause: was this looked for, yes or no. A note,
 * until whoever edits the draft makes it graver; the columns are whatever the plant's own table has.
 */
export const withCheck = (files: Files, claim: Claim, operation: string): Files => {
  const table = files[VALUES] ?? '';
  const [header = ''] = table.split(/\r?\n/, 1);
  const characteristic = `claim-${claim.claim.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`;
  if (table.includes(`${operation},${characteristic},`)) return files;
  const cells: Readonly<Record<string, string>> = {
    operation,
    characteristic,
    en: `Looked for after claim ${claim.claim}: ${claim.says.en}`,
    es: `Buscado tras el reclamo ${claim.claim}: ${claim.says.es}`,
    kind: 'yes-no',
    required: '"yes"',
    grade: 'note',
    from: 'entry',
    asked: 'always',
    worst_of: '1',
    source_kind: 'practice',
    source: 'common practice, no published source',
    on: 'yes',
  };
  const row = header.split(',').map((column) => cells[column.trim()] ?? '-');
  return { ...files, [VALUES]: `${table.replace(/\r?\n?$/, '\n')}${csvOf([row]).replace('\r\n', '\n')}` };
};
