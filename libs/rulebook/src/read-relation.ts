import type { Alternatives, Relation, RelationTerm } from '@libs/judge';
import { measureUnit } from '@libs/kernel';

const TOKEN =
  /\s*(?:(?<name>[a-zA-Z][\w-]*)|(?<number>(?:0|[1-9]\d*)(?:\.\d+)?)|(?<unit>\[[^\]\s]+\][^\s<>=+*-]*)|(?<mark><=|>=|[<>=+*-]))\s*/y;
const OPERATORS = ['<', '<=', '=', '>=', '>'] as const;

type Token = { readonly is: 'name' | 'number' | 'unit' | 'mark'; readonly text: string };

/**
 * Linear relations between characteristics, as `3 * hole <= depth` or `vent * 300 >= floor-area`; several joined by
 * `and`, and ways of meeting them parted by `or`, which binds less. A constant may carry its unit: `12 [in_i]`. A
 * minus between two names needs a space before it, because names may have one inside. Undefined when it is none.
 */
export const readAlternatives = (text: string): Alternatives | undefined => {
  const ways = partedAt('or', tokensOf(text) ?? []).map((way) => partedAt('and', way).map(relationOf));
  const sound = ways.map((way) => way.filter((relation) => relation !== undefined));
  return sound.every((way, at) => way.length === ways[at]?.length) ? sound : undefined;
};

const partedAt = (word: string, tokens: readonly Token[]): readonly (readonly Token[])[] => {
  const parts: Token[][] = [[]];
  for (const token of tokens) {
    if (token.is === 'name' && token.text === word) parts.push([]);
    else parts.at(-1)?.push(token);
  }
  return parts;
};

const relationOf = (tokens: readonly Token[]): Relation | undefined => {
  const [at = -1, ...more] = tokens.flatMap((token, index) => (isOperator(token.text) ? [index] : []));
  const op = OPERATORS.find((one) => one === tokens[at]?.text);
  const left = sumOf(tokens.slice(0, Math.max(0, at)));
  const right = sumOf(tokens.slice(at + 1));
  return op === undefined || more.length > 0 || !left || !right ? undefined : { left, op, right };
};

const isOperator = (mark: string): boolean => OPERATORS.some((op) => op === mark);

const tokensOf = (text: string): readonly Token[] | undefined => {
  const tokens: Token[] = [];
  const pattern = new RegExp(TOKEN);
  while (pattern.lastIndex < text.length) {
    const groups = pattern.exec(text)?.groups;
    if (groups === undefined) return undefined;
    tokens.push(tokenOf(groups));
  }
  return tokens;
};

const tokenOf = (groups: { readonly [group: string]: string | undefined }): Token => {
  const { name, number, unit, mark = '' } = groups;
  if (name !== undefined) return { is: 'name', text: name };
  if (unit !== undefined) return { is: 'unit', text: unit };
  return number === undefined ? { is: 'mark', text: mark } : { is: 'number', text: number };
};

/** Terms joined by + and -; a minus may also stand in front. */
const sumOf = (tokens: readonly Token[]): readonly RelationTerm[] | undefined => {
  const signed = tokens[0]?.text === '-' ? tokens : [PLUS, ...tokens];
  const starts = signed.flatMap(({ text }, index) => (isSign(text) ? [index] : []));
  const terms = starts.map((start, nth) =>
    termOf(signed.slice(start + 1, starts[nth + 1]), signed[start]?.text === '-' ? '-' : ''),
  );
  const sound = terms.filter((term) => term !== undefined);
  return sound.length === terms.length ? sound : undefined;
};

const PLUS: Token = { is: 'mark', text: '+' };
const isSign = (mark: string): boolean => mark === '+' || mark === '-';

/** `hole`, `3`, `3 [in_i]`, `3 * hole` or `hole * 3`. */
const termOf = (tokens: readonly Token[], sign: string): RelationTerm | undefined => {
  const [first, times, second] = tokens;
  if (first === undefined || first.is === 'mark' || first.is === 'unit') return undefined;
  if (tokens.length === 1) {
    return first.is === 'name'
      ? { factor: `${sign}1`, characteristic: first.text }
      : { factor: sign + first.text, characteristic: null };
  }
  if (tokens.length === 2) return constantOf(first, times, sign);
  return tokens.length === 3 && times?.text === '*' ? productOf(first, second, sign) : undefined;
};

/** Names stand for characteristics, so that a unit without brackets is one only after a number. */
const constantOf = (number: Token, unit: Token | undefined, sign: string): RelationTerm | undefined =>
  number.is === 'number' && unit !== undefined && measureUnit(unit.text) !== undefined
    ? { factor: sign + number.text, characteristic: null, unit: unit.text }
    : undefined;

const productOf = (a: Token, b: Token | undefined, sign: string): RelationTerm | undefined => {
  if (a.is === 'number' && b?.is === 'name') return { factor: sign + a.text, characteristic: b.text };
  if (a.is === 'name' && b?.is === 'number') return { factor: sign + b.text, characteristic: a.text };
  return undefined;
};
