import type { Design, Test } from '@libs/judge';
import { passes } from '@libs/judge';
import type { Rational } from '@libs/kernel';
import { compare, rationalOf } from '@libs/kernel';
import type { Domain, When } from './body';

/** Beyond this many designs a check would take longer than anyone waits for a rulebook to be read. */
const MOST_DESIGNS = 200_000;

export const matches = (when: When, design: Design): boolean =>
  when.every(({ attribute, test }) => {
    const value = design[attribute];
    return value !== undefined && passes(test, value, null, null);
  });

type Conditional = { readonly when: When };

/**
 * Of the rows of one decision table that match, the one with most conditions; the first of equals. A table asks for
 * few attributes, so that most designs have been answered before.
 */
export const mostSpecific = <R extends Conditional>(rows: readonly R[], design: Design): R | undefined => {
  const { attributes, answers } = askedOf(rows);
  let key = '';
  for (const attribute of attributes) key += `${design[attribute] ?? ''}\n`;
  const known = answers.get(key);
  if (known !== undefined) return rows[known];

  const found = lookedUp(rows, design);
  if (answers.size >= MOST_ANSWERS) answers.clear();
  answers.set(key, found);
  return rows[found];
};

type Asked = { readonly attributes: readonly string[]; readonly answers: Map<string, number> };

/** A bound, because a number in a design may be any number. */
const MOST_ANSWERS = 500;

const ASKED = new WeakMap<readonly Conditional[], Asked>();

const askedOf = (rows: readonly Conditional[]): Asked => {
  const known = ASKED.get(rows);
  if (known !== undefined) return known;

  const attributes = [...new Set(rows.flatMap(({ when }) => when.map(({ attribute }) => attribute)))];
  const asked = { attributes, answers: new Map<string, number>() };
  ASKED.set(rows, asked);
  return asked;
};

/** Its place in the table; -1 where no row matches. */
const lookedUp = (rows: readonly Conditional[], design: Design): number => {
  let best = -1;
  rows.forEach(({ when }, at) => {
    if (when.length > (rows[best]?.when.length ?? -1) && matches(when, design)) best = at;
  });
  return best;
};

/**
 * Every design there can be over the attributes that some conditions ask about: exact, because a test tells
 * values of a numeric attribute apart only at the numbers it names. Undefined when there are too many.
 */
export const designsOver = (
  whens: readonly When[],
  domains: ReadonlyMap<string, Domain>,
): readonly Design[] | undefined => {
  const tests = new Map<string, Test[]>();
  for (const { attribute, test } of whens.flat()) {
    const list = tests.get(attribute);
    if (list === undefined) tests.set(attribute, [test]);
    else list.push(test);
  }
  const axes = [...tests].map(([attribute, list]) => ({
    attribute,
    values: valuesOf(domains.get(attribute), list),
  }));
  if (axes.reduce((count, { values }) => count * values.length, 1) > MOST_DESIGNS) return undefined;

  return axes.reduce<readonly Design[]>(
    (designs, { attribute, values }) =>
      designs.flatMap((design) => values.map((value) => ({ ...design, [attribute]: value }))),
    [{}],
  );
};

const valuesOf = (domain: Domain | undefined, tests: readonly Test[]): readonly string[] => {
  if (domain !== undefined && (domain.values.length > 0 || !domain.numeric)) return domain.values;
  return tellingNumbers(tests.flatMap(numbersIn));
};

const numbersIn = (test: Test): readonly string[] => {
  switch (test.is) {
    case 'compare':
      return [test.number];
    case 'interval':
      return [test.from, test.to];
    case 'anyOf':
      return test.tests.flatMap(numbersIn);
    case 'not':
      return numbersIn(test.test);
    default:
      return [];
  }
};

/** Each number named, one between each two neighbours, and one beyond either end. */
const tellingNumbers = (named: readonly string[]): readonly string[] => {
  const places = Math.max(0, ...named.map(placesOf));
  const scale = 10n ** BigInt(places + 1);
  const sorted = [...new Set(named.map((number) => scaled(rationalOf(number), scale)))].sort((a, b) =>
    compare({ num: a, den: 1n }, { num: b, den: 1n }),
  );
  const between = sorted.map(
    (number, index) => number + ((sorted[index + 1] ?? number + scale) - number) / 2n,
  );
  const below = sorted.slice(0, 1).map((number) => number - scale);
  return [...below, ...sorted, ...between].map((number) => asDecimal(number, places + 1));
};

const placesOf = (number: string): number => number.split('.')[1]?.length ?? 0;
const scaled = ({ num, den }: Rational, scale: bigint): bigint => (num * scale) / den;

const asDecimal = (number: bigint, places: number): string => {
  const digits = String(number < 0n ? -number : number).padStart(places + 1, '0');
  const fraction = digits.slice(-places).replace(/0+$/, '');
  return `${number < 0n ? '-' : ''}${digits.slice(0, -places)}${fraction === '' ? '' : `.${fraction}`}`;
};
