import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parse, TYPE } from '@formatjs/icu-messageformat-parser';
import { RULINGS } from '../../apps/server/src/http/rejected';
import { floorWords as enFloor } from '../../apps/web/src/words/en/floor';
import { officeWords as enOffice } from '../../apps/web/src/words/en/office';
import { floorWords as esFloor } from '../../apps/web/src/words/es/floor';
import { officeWords as esOffice } from '../../apps/web/src/words/es/office';

const SOURCES = join(__dirname, '../../apps/web/src');
const sources = (folder: string): readonly string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sources(path);
    return /\.tsx?$/.test(entry.name) ? [readFileSync(path, 'utf8')] : [];
  });

type Element = ReturnType<typeof parse>[number];
/** Names that a message has blanks for, those inside its plural and select branches included. */
const blanksOf = (elements: readonly Element[]): readonly string[] =>
  elements.flatMap((element) => [
    ...(element.type === TYPE.literal || element.type === TYPE.pound
      ? []
      : 'value' in element && typeof element.value === 'string'
        ? [element.value]
        : []),
    ...('options' in element
      ? Object.values(element.options).flatMap((option) => blanksOf(option.value))
      : []),
  ]);
const blanks = (message: string): readonly string[] => [...new Set(blanksOf(parse(message)))].sort();

const english: Readonly<Record<string, string>> = { ...enFloor, ...enOffice };
const spanish: Readonly<Record<string, string>> = { ...esFloor, ...esOffice };

describe('the words of the screens', () => {
  it('have a sentence for every reason the record gives for not taking an entry', () => {
    const missing = Object.keys(RULINGS).filter((code) => !(`problem.${code}` in english));
    expect(missing).toStrictEqual([]);
  });

  it('say the same things in English and in Spanish', () => {
    expect(Object.keys(spanish)).toStrictEqual(Object.keys(english));
  });

  it.each(Object.keys(english))('leave the same blanks in both languages: %s', (key) => {
    expect(blanks(spanish[key] ?? '')).toStrictEqual(blanks(english[key] ?? ''));
  });

  it('are all used by some screen', () => {
    const code = sources(SOURCES).join('\n');
    expect(
      Object.keys(english).filter(
        (key) => !key.startsWith('problem.') && !code.includes(`'${key}'`) && !code.includes(`"${key}"`),
      ),
    ).toStrictEqual([]);
  });

  it('of the stations need none of the words that a tablet does not load', () => {
    const floor = [
      'screens/station',
      'screens/start',
      'screens/sign-in',
      'ui',
      'session',
      'scan',
      'api',
      'look',
    ]
      .flatMap((folder) => sources(join(SOURCES, folder)))
      .join('\n');
    expect(
      Object.keys(enOffice).filter((key) => floor.includes(`'${key}'`) || floor.includes(`"${key}"`)),
    ).toStrictEqual([]);
  });

  it('never scold: no error, no invalid, no oops', () => {
    const scolding = [...Object.entries(english), ...Object.entries(spanish)].filter(([, text]) =>
      /\b(error|invalid|oops|inválido)\b/i.test(text),
    );
    expect(scolding).toStrictEqual([]);
  });
});
