import type { Span } from '@libs/plant';
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
