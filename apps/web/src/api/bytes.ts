import type { Answered, Trouble } from './client';
import { ask } from './client';
import { addressOf } from './paths';
import type { Wanted, WebRoute } from './paths';

type Bytes =
  { readonly ok: true; readonly answer: Uint8Array } | { readonly ok: false; readonly trouble: Trouble };

/** A file from the server. What goes wrong is told as for any other question. */
export const fetchBytes = async (route: WebRoute, wanted: Wanted): Promise<Bytes> => {
  const { method, path } = addressOf(route, wanted);
  const response = await fetch(path, { method }).catch(nobodyThere);
  if (response?.ok === true) return { ok: true, answer: new Uint8Array(await response.arrayBuffer()) };
  // The problem is read where all problems are read.
  const asked: Answered<unknown> = await ask(route, wanted);
  return asked.ok ? { ok: false, trouble: { kind: 'unreachable' } } : asked;
};

/** `fetch` says TypeError when nobody answers; anything else is a mistake of ours and must be seen. */
const nobodyThere = (fault: unknown): undefined => {
  if (fault instanceof TypeError) return undefined;
  throw fault;
};
