import { badRequest } from '../http/problem';

/** Enough digits for any ledger, few enough to stay exact. */
const POSITION = /^\d{1,15}$/;

/**
 * Where to begin. Last-Event-ID goes first: a listener that comes back sends it along with the address it
 * first used, and the address says where it began, not where it is.
 */
export const startingPoint = (
  header: string | string[] | undefined,
  after: string | undefined,
): number | undefined => {
  if (header === undefined || header === '') return after === undefined ? undefined : Number(after);
  if (typeof header !== 'string' || !POSITION.test(header)) {
    throw badRequest('Last-Event-ID is not an id this stream gave', [
      { pointer: '#/header/last-event-id', detail: 'must be a ledger position: digits' },
    ]);
  }
  return Number(header);
};
