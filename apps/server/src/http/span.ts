import type { Days, PassageFilter, Span } from '@libs/plant';
import { badRequest } from './problem';

/** The days a question is about. Backwards it would answer with nothing, and look like a quiet plant. */
export const spanOf = ({ from, to }: { readonly [name: string]: string | undefined }): Span => {
  if (from !== undefined && to !== undefined && from > to) {
    throw badRequest('The span ends before it begins', [
      { pointer: '#/query/to', detail: `must not be before ${from}` },
    ]);
  }
  return { from: from ?? null, to: to ?? null };
};

type Query = { readonly [name: string]: string | undefined };

/** A span to compare with, where one is given. */
export const againstOf = ({ against_from: from, against_to: to }: Query): Days | undefined => {
  if (from === undefined && to === undefined) return undefined;
  if (from === undefined || to === undefined) {
    throw badRequest('A span to compare with has a first and a last day', [
      { pointer: `#/query/${from === undefined ? 'against_from' : 'against_to'}`, detail: 'is missing' },
    ]);
  }
  spanOf({ from, to });
  return { from, to };
};

/** Which sections count. One of a pair without the other would leave all of them in, and look like an answer. */
export const filterOf = (query: Query): PassageFilter => {
  const { model, crew, attribute, value, left_from: leftFrom, left_to: leftTo } = query;
  for (const [one, other] of [
    ['attribute', 'value'],
    ['left_from', 'left_to'],
  ] as const) {
    if ((query[one] === undefined) !== (query[other] === undefined)) {
      const missing = query[one] === undefined ? one : other;
      throw badRequest('Half of a choice is missing', [
        { pointer: `#/query/${missing}`, detail: 'is missing' },
      ]);
    }
  }
  return {
    ...(model === undefined ? {} : { model }),
    ...(crew === undefined ? {} : { crew }),
    ...(attribute === undefined || value === undefined ? {} : { attribute, value }),
    ...(leftFrom === undefined || leftTo === undefined ? {} : { leftFrom, leftTo }),
  };
};
