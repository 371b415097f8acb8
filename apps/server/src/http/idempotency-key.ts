import { badRequest } from './problem';

/** Printable ASCII, as a structured-field string holds it (RFC 9651, 3.3.3); long enough for any id in use. */
const BARE = /^[\x21\x23-\x2b\x2d-\x3a\x3c-\x5b\x5d-\x7e]{1,128}$/;
const QUOTED = /^"((?:[\x20\x21\x23-\x5b\x5d-\x7e]|\\["\\]){1,128})"$/;

/**
 * The key, without the quotes the structured-field form has. Bare keys are taken too: many senders
 * write them so, and there is nothing to confuse them with.
 */
export const idempotencyKey = (header: string | string[] | undefined): string => {
  if (header === undefined || header.length === 0)
    throw wrongKey('missing: make one before you send, and keep it until answered');
  if (typeof header !== 'string') throw wrongKey('given more than once');
  if (BARE.test(header)) return header;

  const quoted = QUOTED.exec(header)?.[1];
  if (quoted === undefined) throw wrongKey('not a string of 1 to 128 printable characters');
  return quoted.replace(/\\(["\\])/g, '$1');
};

const wrongKey = (detail: string): Error =>
  badRequest('This route needs an Idempotency-Key', [{ pointer: '#/header/idempotency-key', detail }]);
