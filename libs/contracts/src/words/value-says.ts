import type { ValueKind, Words } from '@libs/judge';
import { inchesAsFraction, isDecimal, measureUnit } from '@libs/kernel';
import { isKey, joined, same, say } from './say';

/** A unit as people say it: `in of water`. */
export const unitSays = (code: string): Words => {
  const key = `unit.${code}`;
  return isKey(key) ? say(key) : same(measureUnit(code)?.symbol ?? code);
};

/** A recorded value as people say it: `36-1/2 in`, `yes`, `7`. */
export const valueSays = (value: string, unit: string | null = null): Words => {
  if (value === 'yes' || value === 'no') return say(`value.${value}`);
  if (value === '') return say('value.nothing');
  return withUnit(numberSays(value, unit), unit);
};

/** Inches as a tape shows them, where a mark on the tape says it exactly. */
const numberSays = (value: string, unit: string | null): string =>
  unit === '[in_i]' ? inchesAsFraction(value).replace(' ', '-') : value;

const withUnit = (value: string, unit: string | null): Words => {
  const symbol = unit === null ? same('') : unitSays(unit);
  return symbol.en === '' ? same(value) : say('value.with-unit', { value, unit: symbol });
};

/** What is required, in words, from the table's own cell: `>= 7` is "at least 7", `[10..14]` is "10 to 14 in of water". */
export const requirementSays = (
  required: string,
  unit: string | null,
  kind: ValueKind | null = null,
): Words => {
  const cell = required.trim();
  if (cell === '' || cell === '-') return say('required.any');
  if (cell === '0' && (kind === 'count' || unit === '1')) return say('required.none');

  const not = /^not\((.*)\)$/.exec(cell);
  if (not?.[1] !== undefined) return say('required.not', { value: requirementSays(not[1], unit, kind) });

  const parts = alternatives(cell).map((part) => partSays(part, unit));
  const [last, ...before] = [...parts].reverse();
  if (last === undefined || before.length === 0) return last ?? say('required.any');
  return say('required.or', { first: joined(before.reverse(), ', '), last });
};

/** At the commas outside quotes and brackets. */
const alternatives = (cell: string): readonly string[] =>
  cell
    .match(/"[^"]*"|[[\](][^[\]()]*[[\])]|[^",]+/g)
    ?.map((part) => part.trim())
    .filter((part) => part !== '') ?? [];

const COMPARISONS = {
  '>=': 'required.at-least',
  '<=': 'required.at-most',
  '>': 'required.more-than',
  '<': 'required.less-than',
} as const;

const partSays = (part: string, unit: string | null): Words => {
  const [, sign, number] = /^(>=|<=|>|<)\s*(\S+)$/.exec(part) ?? [];
  if (isComparison(sign) && number !== undefined)
    return say(COMPARISONS[sign], { value: valueSays(number, unit) });

  const [, opens, from, to, closes] = /^([[\](])\s*(\S+?)\s*\.\.\s*(\S+?)\s*([[\])])$/.exec(part) ?? [];
  if (from !== undefined && to !== undefined)
    return betweenSays({ from, to, open: opens !== '[' || closes !== ']' }, unit);

  const text = /^"(.*)"$/.exec(part)?.[1] ?? part;
  return isDecimal(text) && !part.startsWith('"') ? valueSays(text, unit) : valueSays(text);
};

const isComparison = (sign: string | undefined): sign is keyof typeof COMPARISONS =>
  sign !== undefined && Object.hasOwn(COMPARISONS, sign);

/** The unit is said once, after the second number. */
const betweenSays = (
  { from, to, open }: { from: string; to: string; open: boolean },
  unit: string | null,
): Words =>
  open
    ? same(`${from} .. ${to}`)
    : say('required.between', { from: numberSays(from, unit), to: valueSays(to, unit) });
