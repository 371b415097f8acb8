import { compare, rationalOf } from '@libs/kernel';
import { isCalendarDay } from '@libs/judge';
import type { Test } from '@libs/judge';
import type { Token } from './feel-tokens';
import { tokensOf } from './feel-tokens';

/** A cell compiled, or why it is of no form a cell may have. */
export type CompiledCell =
  { readonly ok: true; readonly test: Test } | { readonly ok: false; readonly says: string };

const FORMS =
  'a comparison (>= 7), an interval ([10..14]), a list ("I","II"), not(...), a number, a day (date("2026-05-01")), ' +
  '"text", true, false or -';

/**
 * A cell in the notation of DMN's unary tests, compiled to plain data. Comparisons, intervals open or closed at
 * either end, lists, `not(...)`, numbers, text, `true` and `false`, and `-` for anything. Whatever else FEEL
 * allows (names, functions, arithmetic) is refused when the rulebook is read, not on the floor.
 */
export const compileCell = (cell: string): CompiledCell => {
  const text = cell.trim();
  if (text === '' || text === '-') return { ok: true, test: { is: 'any' } };

  const tokens = tokensOf(text);
  if (tokens === undefined) return wrong(text);
  const parsed = negationOrList(tokens);
  return parsed === undefined ? wrong(text) : checked(parsed, text);
};

const wrong = (text: string): CompiledCell => ({ ok: false, says: `\`${text}\` is not ${FORMS}` });

const checked = (test: Test, text: string): CompiledCell =>
  emptyInterval(test)
    ? { ok: false, says: `\`${text}\` is an interval with nothing in it` }
    : { ok: true, test };

const negationOrList = (tokens: readonly Token[]): Test | undefined => {
  const [first, second, ...rest] = tokens;
  if (first?.is !== 'not') return list(tokens);
  if (second?.text !== '(' || rest.at(-1)?.text !== ')') return undefined;

  const inner = list(rest.slice(0, -1));
  return inner && { is: 'not', test: inner };
};

/** One or more tests, separated by commas. */
const list = (tokens: readonly Token[]): Test | undefined => {
  const parts = splitAtCommas(tokens).map(single);
  const tests = parts.filter((part) => part !== undefined);
  const [only] = tests;
  if (tests.length !== parts.length || only === undefined) return undefined;
  return tests.length === 1 ? only : { is: 'anyOf', tests };
};

const splitAtCommas = (tokens: readonly Token[]): readonly (readonly Token[])[] => {
  const parts: Token[][] = [[]];
  for (const token of tokens) {
    if (token.text === ',' && token.is === 'mark') parts.push([]);
    else parts.at(-1)?.push(token);
  }
  return parts;
};

const single = (tokens: readonly Token[]): Test | undefined => {
  switch (tokens.length) {
    case 1:
      return literal(tokens[0]);
    case 2:
      return comparison(tokens);
    case 5:
      return interval(tokens);
    default:
      return undefined;
  }
};

const literal = (token: Token | undefined): Test | undefined => {
  switch (token?.is) {
    case 'number':
      return { is: 'compare', op: '=', number: token.text };
    case 'day':
      return isCalendarDay(token.text) ? { is: 'day', op: '=', day: token.text } : undefined;
    case 'text':
      return { is: 'text', text: token.text };
    case 'boolean':
      return { is: 'boolean', boolean: token.text === 'true' };
    default:
      return undefined;
  }
};

const comparison = ([op, limit]: readonly Token[]): Test | undefined => {
  const known = COMPARISONS.find((one) => one === op?.text);
  if (known === undefined || op?.is !== 'mark' || limit === undefined) return undefined;
  if (limit.is === 'number') return { is: 'compare', op: known, number: limit.text };
  return isDayToken(limit) ? { is: 'day', op: known, day: limit.text } : undefined;
};
const isDayToken = ({ is, text }: Token): boolean => is === 'day' && isCalendarDay(text);
const COMPARISONS = ['<', '<=', '>', '>='] as const;

/** `[` and `]` at their own ends are closed; `(`, `)` and a bracket turned away are open. */
const interval = (tokens: readonly Token[]): Test | undefined => {
  const [open, from, dots, to, close] = tokens;
  const framed = isBracket(open, '[(]') && dots?.text === '..' && isBracket(close, '])[');
  if (!framed || from === undefined || to === undefined) return undefined;
  const ends = { from: from.text, to: to.text, ...closedEnds(tokens) };
  if (areBoth(from, to, isNumberToken)) return { is: 'interval', ...ends };
  return areBoth(from, to, isDayToken) ? { is: 'days', ...ends } : undefined;
};

const areBoth = (from: Token, to: Token, are: (token: Token) => boolean): boolean => are(from) && are(to);
const isNumberToken = ({ is }: Token): boolean => is === 'number';

const closedEnds = (
  tokens: readonly Token[],
): { readonly fromClosed: boolean; readonly toClosed: boolean } => ({
  fromClosed: tokens[0]?.text === '[',
  toClosed: tokens[4]?.text === ']',
});

const isBracket = (token: Token | undefined, allowed: string): boolean =>
  token?.is === 'mark' && allowed.includes(token.text);

const emptyInterval = (test: Test): boolean => {
  switch (test.is) {
    case 'interval':
      return isEmpty(compare(rationalOf(test.from), rationalOf(test.to)), test);
    case 'days':
      return isEmpty(test.from < test.to ? -1 : test.from > test.to ? 1 : 0, test);
    case 'anyOf':
      return test.tests.some(emptyInterval);
    case 'not':
      return emptyInterval(test.test);
    default:
      return false;
  }
};

type Ends = { readonly fromClosed: boolean; readonly toClosed: boolean };

/** From how its ends compare. */
const isEmpty = (order: number, { fromClosed, toClosed }: Ends): boolean =>
  order > 0 || (order === 0 && !(fromClosed && toClosed));
