import type { Chance } from './chance';
import type { Document, Operation, Schema } from './document';
import { resolved } from './document';
import { HOSTILE_BODIES, HOSTILE_TEXT, HOSTILE_VALUES } from './hostile';

export type Sent = {
  readonly operation: Operation;
  readonly path: string;
  readonly body: string | undefined;
  readonly headers: { readonly [name: string]: string };
};

/** Deep enough for every shape there is. */
const DEEPEST = 7;
const KNOWN_TEXT = [
  ...['T-600A', 'T-600', 'rough-in', 'drywall', 'wire-protected', 'lead', 'manager', 'L-1', 'batt'],
  ...['2026-03-02T08:00:00.000-06:00', '2026-03-02', '1', '[in_i]', 'all'],
];

type Making = { readonly chance: Chance; readonly document: Document };

/** Something of this shape: mostly right, at its bounds, and now and then something else altogether. */
const valueOf = (making: Making, schema: Schema, depth = 0): unknown => {
  const { chance, document } = making;
  const shape = resolved(schema, document);
  if (chance.often(0.04)) return chance.oneOf(HOSTILE_VALUES);
  if (depth > DEEPEST) return null;
  if (shape.const !== undefined) return shape.const;
  if (shape.enum !== undefined) return chance.oneOf(shape.enum);
  const choices = shape.anyOf ?? shape.oneOf ?? shape.allOf;
  if (choices !== undefined) return valueOf(making, chance.oneOf(choices), depth + 1);
  return typed(making, shape, depth);
};

const typed = (making: Making, shape: Schema, depth: number): unknown => {
  const { chance } = making;
  const type = typeof shape.type === 'string' ? shape.type : chance.oneOf(shape.type ?? ['object']);
  switch (type) {
    case 'string':
      return chance.oneOf(chance.often(0.6) ? KNOWN_TEXT : HOSTILE_TEXT);
    case 'integer':
    case 'number':
      return chance.oneOf([0, 1, -1, 2, 1_000_000, 2 ** 53, 0.5]);
    case 'boolean':
      return chance.often(0.5);
    case 'array':
      return Array.from({ length: chance.below(4) }, () => valueOf(making, shape.items ?? {}, depth + 1));
    case 'null':
      return null;
    default:
      return objectOf(making, shape, depth);
  }
};

const objectOf = (making: Making, shape: Schema, depth: number): object => {
  const { chance } = making;
  const wanted = Object.entries(shape.properties ?? {}).filter(
    ([name]) => (shape.required ?? []).includes(name) || chance.often(0.5),
  );
  const more = chance.often(0.05) ? [[chance.oneOf(['extra', '__proto__', 'role']), 'administrator']] : [];
  return Object.fromEntries([
    ...wanted
      .filter(() => !chance.often(0.03))
      .map(([name, inner]) => [name, valueOf(making, inner, depth + 1)]),
    ...more,
  ]) as object;
};

const bodyOf = (making: Making, { body, example }: Operation): string | undefined => {
  const { chance } = making;
  if (body === undefined) return chance.often(0.02) ? chance.oneOf(HOSTILE_BODIES) : undefined;
  const die = chance.below(100);
  if (die < 6) return chance.oneOf(HOSTILE_BODIES);
  if (die < 20) return JSON.stringify(example ?? {});
  if (die < 60 && typeof example === 'object' && example !== null)
    return JSON.stringify(bent(making, example));
  return JSON.stringify(valueOf(making, body));
};

/** The document's own example with one field gone or another. */
const bent = ({ chance }: Making, example: object): object => {
  const fields = Object.entries(example);
  const at = chance.below(Math.max(1, fields.length));
  return Object.fromEntries(
    fields.flatMap(([name, value], index) => {
      if (index !== at) return [[name, value]];
      return chance.often(0.2) ? [] : [[name, chance.oneOf([...HOSTILE_TEXT, ...HOSTILE_VALUES])]];
    }),
  );
};

const textFor = (chance: Chance): string => chance.oneOf(chance.often(0.6) ? KNOWN_TEXT : HOSTILE_TEXT);

/** Halves of pairs have no address; nobody can send them so. */
const encoded = (text: string): string => encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\ufffd'));

const pathOf = ({ chance }: Making, { path, parameters }: Operation): string => {
  const filled = path.replace(/\{\w+\}/g, () => encoded(textFor(chance)) || '%20');
  const queries = parameters.filter((one) => one.in === 'query');
  const asked = queries.filter(() => chance.often(0.6));
  const pairs = [...asked, ...(chance.often(0.05) ? queries : [])].map(({ name = '', schema }) => {
    const value =
      chance.often(0.4) && schema?.enum !== undefined ? chance.oneOf(schema.enum) : textFor(chance);
    return `${name}=${encoded(String(value))}`;
  });
  return pairs.length === 0 ? filled : `${filled}?${pairs.join('&')}`;
};

export const requestFrom = (making: Making, operation: Operation, nth: number): Sent => {
  const { chance } = making;
  const body = operation.method === 'GET' ? undefined : bodyOf(making, operation);
  const key = chance.often(0.95) ? `fuzz-${String(nth)}` : chance.oneOf(['', 'x'.repeat(400), '"open']);
  return {
    operation,
    path: pathOf(making, operation),
    body,
    headers: {
      'idempotency-key': key,
      ...(body === undefined
        ? {}
        : { 'content-type': chance.often(0.97) ? 'application/json' : 'text/plain' }),
      ...(operation.name === 'stream' && chance.often(0.3) ? { 'last-event-id': 'x1' } : {}),
    },
  };
};
