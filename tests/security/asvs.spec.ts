import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const PROJECT = join(__dirname, '../..');
const PAGE = readFileSync(join(PROJECT, 'apps/server/ASVS.md'), 'utf8');
type Selection = { readonly requirements: readonly { readonly id: string }[] };
const selection = JSON.parse(readFileSync(join(__dirname, 'asvs-5.0.0-selection.json'), 'utf8')) as Selection;

const ANSWERS = ['met', 'partly', 'not met', 'n/a'];
const rows = PAGE.split('\n')
  .map((line) => line.split('|').map((cell) => cell.trim()))
  .filter(([, id = '']) => /^\d+\.\d+\.\d+$/.test(id))
  .map(([, id = '', answer = '', how = '', shown = '']) => ({ id, answer, how, shown }));

describe('the page that answers ASVS 5.0', () => {
  it('answers every requirement of the selection, once and in its order', () => {
    expect(rows.map(({ id }) => id)).toStrictEqual(selection.requirements.map(({ id }) => id));
  });

  it.each(rows)('says of $id whether it is met, and how', ({ answer, how }) => {
    expect(ANSWERS).toContain(answer);
    expect(how.length).toBeGreaterThan(2);
  });

  it.each(rows.filter(({ shown }) => shown !== ''))('names a test that exists, at $id', ({ shown }) => {
    const [, file = '', title = ''] = /^`([^`]+)`(?:: “(.+)”)?$/.exec(shown) ?? [];
    expect(existsSync(join(PROJECT, file))).toBe(true);
    expect(readFileSync(join(PROJECT, file), 'utf8')).toContain(title);
  });

  it('calls nothing met without a test, but what is shown by the page itself', () => {
    const bare = rows.filter(({ answer, shown }) => answer === 'met' && shown === '').map(({ id }) => id);
    expect(bare).toStrictEqual(['11.1.2', '16.1.1']);
  });
});

describe('the web app', () => {
  it('writes no HTML by hand', () => {
    const folder = join(PROJECT, 'apps/web/src');
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
      /\.tsx?$/.test(name),
    );
    expect(files.length).toBeGreaterThan(100);
    for (const name of files)
      expect(readFileSync(join(folder, name), 'utf8')).not.toMatch(
        /dangerouslySetInnerHTML|\.innerHTML|outerHTML|insertAdjacentHTML|document\.write|\beval\(|new Function/,
      );
  });
});
