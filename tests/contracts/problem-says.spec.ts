import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { PROBLEMS, problemSays } from '@libs/contracts';

const SOURCES = join(__dirname, '../../libs/rulebook/src');
const source = readdirSync(SOURCES)
  .filter((file) => file.endsWith('.ts'))
  .map((file) => readFileSync(join(SOURCES, file), 'utf8'))
  .join('\n');

/** Sentences as they stand in the sources, with their blanks filled in by something. */
const written = [
  ...source.matchAll(
    /(?:says: |complain(?:Here)?\((?:'[a-z_.]+'|\w+|null), |complain\(|at\(column, |problem\(\w+, |return \[?|regex\([^,\n]+, |min\(1, |=> \[|says\(|: )(?:'((?:is|has|are|a|belongs?|goes|names|column|can|may) [^'\n]+)'|`((?:\\`|[^`\n])+)`)/g,
  ),
].map(([, plain = '', template = '']) => (plain === '' ? template : plain));
const FORMS =
  'a comparison (>= 7), an interval ([10..14]), a list ("I","II"), not(...), a number, a day (date("2026-05-01")), ' +
  '"text", true, false or -';
const filled = (text: string): string =>
  text
    .replace(/\\`/g, '`')
    .replace('${FORMS}', FORMS)
    .replace(/\$\{[^}]*\}/g, 'wind zone');
/** What looks like a sentence there and is something else: keys, patterns, texts put together from parts. */
const IS_ONE = /^(?:`?\\`|"|is |has |are |a |belongs? |goes |names |column |can |may |needs |disagrees )/;
const sentences = [...new Set(written.filter((text) => IS_ONE.test(text)).map(filled))].filter(
  (text) => text.includes(' ') && !text.includes('FORMS') && /[a-z] [a-z]/.test(text),
);

describe('what is to be mended in a rulebook', () => {
  it('is found in the sources at all', () => {
    expect(sentences.length).toBeGreaterThan(50);
  });

  it.each(sentences)('is said in Spanish too: %s', (text) => {
    const { en, es } = problemSays(text);
    expect(en).toBe(text);
    expect(es).not.toBe(text);
  });

  it.each(PROBLEMS)('has the same blanks in both languages: %s', (english, spanish) => {
    expect(spanish.split('{}')).toHaveLength(english.split('{}').length);
  });

  it('keeps what stands in its blanks, in its order', () => {
    expect(problemSays('`wired-up` is no operation of this rulebook').es).toBe(
      '`wired-up` no está en este reglamento (operation)',
    );
    expect(problemSays('disagrees with row 7, as specific, where wind is II').es).toBe(
      'contradice la fila 7, igual de específica, donde wind is II',
    );
  });

  it('leaves a sentence nobody has put into Spanish as it is', () => {
    expect(problemSays('qux')).toStrictEqual({ en: 'qux', es: 'qux' });
  });
});
