import type { ValueKind, Words } from '@libs/judge';
import { inchesAsFraction, isDecimal, measureUnit } from '@libs/kernel';
import type { Key } from './catalogue-en';
import { isKey, joined, same, say } from './say';

/** A unit as people say it: `in of water`. */
export const unitSays = (code: string): Words => {
  const key = `unit.${code}`;
  return isKey(key) ? say(key) : same(measureUnit(code)?.symbol ?? code);
};

/** What a value that is named in words is called in each language. */
type InWords = (value: string) => Words;

/** A recorded value as people say it: `36-1/2 in`, `yes`, `7`. */
export const valueSays = (value: string, unit: string | null = null, text: InWords = same): Words => {
  if (value === 'yes' || value === 'no') return say(`value.${value}`);
  if (value === '') return say('value.nothing');
  return unit === null && !isDecimal(value) ? text(value) : withUnit(numberSays(value, unit), unit);
};

/** Inches as a tape shows them, where a mark on the tape says it exactly. */
const numberSays = (value: string, unit: string | null): string =>
  unit === '[in_i]' ? inchesAsFraction(value).replace(' ', '-') : value;

const withUnit = (value: string, unit: string | null): Words => {
  const symbol = unit === null ? same('') : unitSays(unit);
  return symbol.en === '' ? same(value) : say('value.with-unit', { value, unit: symbol });
};

/**
 * What is required, in words, from the table's own cell: `>= 7` is "at least 7", `[10..14]` is "10 to 14 in of
 * water". `unit` is the UCUM code of the requirement.
 */
export const requirementSays = (
  required: string,
  unit: string | null,
  kind: ValueKind | null = null,
  text: InWords = same,
): Words => {
  const cell = required.trim();
  if (kind === 'derived' || isRelation(cell)) return say('required.derived');
  if (cell === '0' && (kind === 'count' || unit === '1')) return say('required.none');

  const inner = /^not\((.*)\)$/.exec(cell)?.[1];
  if (inner !== undefined) return say('required.not', { value: requirementSays(inner, unit, kind, text) });

  return either(alternatives(cell).map((part) => partSays(part, unit, text)));
};

/** A relation between readings, not a limit: `3 * hole <= joist-depth`. Limits begin with their sign, or have none. */
export const isRelation = (cell: string): boolean => /^[a-z\d][^"]*[<>=]/i.test(cell);

/** At the commas outside quotes and brackets. */
const alternatives = (cell: string): readonly string[] =>
  (cell === '-' ? [] : (cell.match(/"[^"]*"|[[\](][^[\]()]*[[\])]|[^",]+/g) ?? []))
    .map((part) => part.trim())
    .filter((part) => part !== '');

const either = (parts: readonly Words[]): Words => {
  const last = parts.at(-1);
  if (last === undefined) return say('required.any');

  return parts.length === 1 ? last : say('required.or', { first: joined(parts.slice(0, -1), ', '), last });
};

const partSays = (part: string, unit: string | null, text: InWords): Words => {
  const quoted = /^"(.*)"$/.exec(part)?.[1];
  if (quoted !== undefined) return valueSays(quoted, null, text);

  return (
    comparisonSays(part, unit) ?? intervalSays(part, unit) ?? valueSays(part, isDecimal(part) ? unit : null)
  );
};

const comparisonSays = (part: string, unit: string | null): Words | undefined => {
  const [, sign = '', number = ''] = /^(>=|<=|>|<)\s*(\S+)$/.exec(part) ?? [];
  const key = COMPARISONS[sign];
  return key === undefined ? undefined : say(key, { value: valueSays(number, unit) });
};

const COMPARISONS: { readonly [sign: string]: Key } = {
  '>=': 'required.at-least',
  '<=': 'required.at-most',
  '>': 'required.more-than',
  '<': 'required.less-than',
};

/** The unit is said once, after the second number. An open end is said as it is: it counts as outside. */
const intervalSays = (part: string, unit: string | null): Words | undefined => {
  const [, opens, from = '', to = '', closes] =
    /^([[\](])\s*(\S+?)\s*\.\.\s*(\S+?)\s*([[\])])$/.exec(part) ?? [];
  if (opens === undefined) return undefined;
  if (opens === '[' && closes === ']') {
    return say('required.between', { from: numberSays(from, unit), to: valueSays(to, unit) });
  }
  return joined(
    [
      say(opens === '[' ? 'required.at-least' : 'required.more-than', { value: valueSays(from, unit) }),
      say(closes === ']' ? 'required.at-most' : 'required.less-than', { value: valueSays(to, unit) }),
    ],
    ', ',
  );
};
