export type Token = {
  readonly is: 'mark' | 'number' | 'day' | 'text' | 'boolean' | 'not';
  readonly text: string;
};

/** Marks, decimal numbers as they are written (`.5` and `05` are not), days, text in double quotes, three words. */
const TOKEN =
  /\s*(?:(?:date\s*\(\s*"(?<date>\d{4}-\d\d-\d\d)"\s*\)|@"(?<at>\d{4}-\d\d-\d\d)")|(?<text>"(?:[^"\\]|\\["\\nt])*")|(?<number>-?(?:0|[1-9]\d*)(?:\.\d+)?)(?![\w])|(?<word>true|false|not)(?!\w)|(?<mark>\.\.|<=|>=|[<>[\](),]))\s*/y;

/** The cell's tokens; undefined when something in it is none. */
export const tokensOf = (cell: string): readonly Token[] | undefined => {
  const tokens: Token[] = [];
  const pattern = new RegExp(TOKEN);
  while (pattern.lastIndex < cell.length) {
    const groups = pattern.exec(cell)?.groups;
    if (groups === undefined) return undefined;
    tokens.push(tokenOf(groups));
  }
  return tokens;
};

const tokenOf = (groups: { readonly [name: string]: string | undefined }): Token => {
  const { text, number, word, mark, date, at } = groups;
  const day = date ?? at;
  if (day !== undefined) return { is: 'day', text: day };
  if (text !== undefined) return { is: 'text', text: unquoted(text) };
  if (number !== undefined) return { is: 'number', text: number };
  if (word !== undefined) return { is: word === 'not' ? 'not' : 'boolean', text: word };
  return { is: 'mark', text: mark ?? '' };
};

const ESCAPED: { readonly [letter: string]: string } = { n: '\n', t: '\t' };

const unquoted = (quoted: string): string =>
  quoted.slice(1, -1).replace(/\\(.)/g, (_, letter: string) => ESCAPED[letter] ?? letter);
