import type { Relation, RelationTerm } from '@libs/judge';

const TOKEN =
  /\s*(?:(?<name>[a-zA-Z][\w-]*)|(?<number>(?:0|[1-9]\d*)(?:\.\d+)?)|(?<mark><=|>=|[<>=+*-]))\s*/y;
const OPERATORS = ['<', '<=', '=', '>=', '>'] as const;

type Token = { readonly is: 'name' | 'number' | 'mark'; readonly text: string };

/**
 * A linear relation between characteristics, as `3 * hole <= depth` or `vent * 300 >= floor-area`. A minus
 * between two names needs a space before it, because names may have one inside. Undefined when it is none.
 */
export const readRelation = (text: string): Relation | undefined => {
  const tokens = tokensOf(text);
  const ops = tokens?.filter(({ text: mark }) => isOperator(mark)) ?? [];
  const op = OPERATORS.find((one) => one === ops[0]?.text);
  if (tokens === undefined || op === undefined || ops.length !== 1) return undefined;

  const middle = tokens.findIndex(({ text: mark }) => mark === op);
  const left = sumOf(tokens.slice(0, middle));
  const right = sumOf(tokens.slice(middle + 1));
  return left && right && { left, op, right };
};

const isOperator = (mark: string): boolean => OPERATORS.some((op) => op === mark);

const tokensOf = (text: string): readonly Token[] | undefined => {
  const tokens: Token[] = [];
  const pattern = new RegExp(TOKEN);
  while (pattern.lastIndex < text.length) {
    const groups = pattern.exec(text)?.groups;
    if (groups === undefined) return undefined;
    const { name, number, mark } = groups;
    if (name !== undefined) tokens.push({ is: 'name', text: name });
    else if (number !== undefined) tokens.push({ is: 'number', text: number });
    else tokens.push({ is: 'mark', text: mark ?? '' });
  }
  return tokens;
};

/** Terms joined by + and -; a minus may also stand in front. */
const sumOf = (tokens: readonly Token[]): readonly RelationTerm[] | undefined => {
  const terms: RelationTerm[] = [];
  let rest = tokens;
  do {
    const signed = rest[0]?.text === '-' || (terms.length > 0 && rest[0]?.text === '+');
    if (terms.length > 0 && !signed) return undefined;
    const start = signed ? 1 : 0;
    const end = nextSign(rest, start);
    const term = termOf(rest.slice(start, end), rest[0]?.text === '-');
    if (term === undefined) return undefined;
    terms.push(term);
    rest = rest.slice(end);
  } while (rest.length > 0);
  return terms;
};

const nextSign = (tokens: readonly Token[], start: number): number => {
  const next = tokens.findIndex(({ text }, index) => index > start && (text === '+' || text === '-'));
  return next < 0 ? tokens.length : next;
};

/** `hole`, `3`, `3 * hole` or `hole * 3`. */
const termOf = (tokens: readonly Token[], negative: boolean): RelationTerm | undefined => {
  const sign = negative ? '-' : '';
  const name = tokens.find(({ is }) => is === 'name')?.text ?? null;
  const number = tokens.find(({ is }) => is === 'number')?.text;
  if (tokens.length === 1) return { factor: sign + (number ?? '1'), characteristic: name };

  const product = tokens.length === 3 && tokens[1]?.text === '*' && name !== null && number !== undefined;
  return product ? { factor: sign + number, characteristic: name } : undefined;
};
