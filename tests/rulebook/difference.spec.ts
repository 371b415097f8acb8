import { changeSays } from '@libs/contracts';
import { differenceOf, readRulebook, touchedBy } from '@libs/rulebook';
import type { Change, Rulebook, RulebookFiles } from '@libs/rulebook';
import { demonstrationRulebookFiles } from '../support/demonstration-rulebook';

const FILES = demonstrationRulebookFiles();

const read = (files: RulebookFiles): Rulebook => {
  const answer = readRulebook(files);
  if (!answer.ok)
    throw new Error(answer.problems.map(({ file, row, says }) => `${file}:${row} ${says}`).join('\n'));
  return answer.rulebook;
};
const BEFORE = read(FILES);

const changedIn = (file: string, from: string, to: string): readonly Change[] => {
  const text = FILES[file] ?? '';
  expect(text).toContain(from);
  return differenceOf(BEFORE, read({ ...FILES, [file]: text.replace(from, to) }));
};
const inEnglish = (changes: readonly Change[]): readonly string[] => changes.map((one) => changeSays(one).en);

const LAG =
  'floor-lagged,side-spacing,"Spacing on each side, largest","Separación en cada lado, la mayor",measure,[in_i],';

describe('the difference between two rulebooks', () => {
  it('is nothing between one and itself', () => {
    expect(differenceOf(BEFORE, read(FILES))).toStrictEqual([]);
  });

  it('says of a limit what it was and becomes, and where it holds, in both languages', () => {
    const changes = changedIn('values.csv', `${LAG}<= 36`, `${LAG}<= 32`);
    expect(changes).toHaveLength(1);
    expect(changes[0]).toMatchObject({
      what: 'value',
      change: 'changed',
      id: 'floor-lagged',
      file: 'values.csv',
      row: 175,
    });
    expect(inEnglish(changes)[0]).toMatch(/wind zone I: .*at most 36 in becomes at most 32 in/i);
    const { es } = changes.map((one) => changeSays(one))[0] ?? { es: '' };
    expect(es).toMatch(/36.*32/);
    expect(es).not.toMatch(/becomes/);
  });

  it('takes a word of a label for a change that nobody has to approve', () => {
    const changes = changedIn('values.csv', ',Character height,', ',Height of characters,');
    expect(changes).toHaveLength(1);
    expect(touchedBy(changes)).toStrictEqual({ design: false, manual: false });
  });

  it('finds a published limit touched, and with it the design', () => {
    expect(touchedBy(changedIn('values.csv', '>= 0.375', '>= 0.5')).design).toBe(true);
  });

  it('finds a cover that is dropped, with the row it had before', () => {
    const row = 'decked,floor-piped,any,-,refuse,practice,"common practice, no published source",-,-,-,-\n';
    const changes = changedIn('covers.csv', row, '').filter(({ what }) => what === 'cover');
    expect(changes).toMatchObject([{ change: 'dropped', id: 'decked', file: 'covers.csv', row: 3 }]);
  });

  it('is the same the other way round, with before and after in each other’s place', () => {
    const text = FILES['values.csv'] ?? '';
    const after = read({ ...FILES, 'values.csv': text.replace(`${LAG}<= 36`, `${LAG}<= 32`) });
    const [there] = differenceOf(BEFORE, after);
    const [back] = differenceOf(after, BEFORE);
    expect(back?.aspects.map(({ before, after: then }) => [before, then])).toStrictEqual(
      there?.aspects.map(({ before, after: then }) => [then, before]),
    );
  });

  it('finds a kind of lot that is new', () => {
    const changes = changedIn(
      'lots.csv',
      'tire,Tires,Llantas,no',
      'tire,Tires,Llantas,no\nrim,Rims,Rines,no',
    );
    expect(changes).toMatchObject([{ what: 'list', change: 'added', file: 'lots.csv' }]);
  });
});
