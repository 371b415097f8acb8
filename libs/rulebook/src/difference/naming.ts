import { passes } from '@libs/judge';
import type { Test, Words } from '@libs/judge';
import type { When } from '../body';
import type { Rulebook } from '../rulebook';
import type { Condition, Told } from './change';

/** The names a rulebook gives its operations and what hangs on them. */
export type Naming = {
  readonly operation: (id: string) => Words;
  readonly listed: (ids: readonly string[]) => Told | null;
  readonly station: (id: string) => Told;
  readonly crew: (id: string) => Told;
  readonly conditions: (when: When) => readonly Condition[];
};

type Named = { readonly id: string; readonly name: Words };

export const namingIn = ({ operations, stations, crews, attributes }: Rulebook): Naming => {
  const operation = lookUp(operations);
  const told = (named: (id: string) => Words) => (id: string) =>
    ({ is: 'words', words: named(id), key: id }) as const;
  const attribute = new Map(attributes.map((one) => [one.id, one]));
  const condition = ({ attribute: id, test }: When[number]): Condition => {
    const known = attribute.get(id);
    const values = known?.values.filter(({ value }) => passes(test, value, null, null)) ?? [];
    return {
      attribute: known?.name ?? { en: id, es: id },
      values: values.map(({ says }) => says),
      cell: values.length > 0 ? null : cellOf(test),
    };
  };
  return {
    operation,
    listed: (ids) =>
      ids.length === 0 ? null : { is: 'words', words: list(ids.map(operation)), key: ids.join(' ') },
    station: told(lookUp(stations)),
    crew: told(lookUp(crews)),
    conditions: (when) => when.map(condition),
  };
};

const lookUp = (all: readonly Named[]): ((id: string) => Words) => {
  const names = new Map(all.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? { en: id, es: id };
};

const list = (all: readonly Words[]): Words => ({
  en: all.map(({ en }) => en).join(', '),
  es: all.map(({ es }) => es).join(', '),
});

/** A compiled test as its cell would have it. */
export const cellOf = (test: Test): string => {
  switch (test.is) {
    case 'any':
      return '-';
    case 'compare':
      return compared(test.op, test.number);
    case 'day':
      return compared(test.op, test.day);
    case 'interval':
    case 'days':
      return intervalCell(test);
    case 'text':
      return JSON.stringify(test.text);
    case 'boolean':
      return String(test.boolean);
    case 'anyOf':
      return test.tests.map(cellOf).join(', ');
    case 'not':
      return `not(${cellOf(test.test)})`;
  }
};

const compared = (op: string, than: string): string => (op === '=' ? than : `${op} ${than}`);

const intervalCell = ({
  from,
  fromClosed,
  to,
  toClosed,
}: Extract<Test, { readonly is: 'interval' | 'days' }>): string =>
  `${fromClosed ? '[' : '('}${from}..${to}${toClosed ? ']' : ')'}`;
