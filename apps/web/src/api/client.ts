import type { AnswerOf } from '@libs/contracts';
import { addressOf } from './paths';
import type { Wanted, WebRoute } from './paths';

/** Why there is no answer. `unreachable`: nobody answered, and nothing is known of what became of the request. */
export type Trouble =
  | { readonly kind: 'unreachable' }
  | {
      readonly kind: 'problem';
      readonly status: number;
      readonly code: string | null;
      readonly says: string;
      readonly errors: readonly { readonly pointer: string; readonly detail: string }[];
    };
export type Answered<A> =
  { readonly ok: true; readonly answer: A } | { readonly ok: false; readonly trouble: Trouble };

type ProblemBody = {
  readonly title?: string;
  readonly detail?: string;
  readonly code?: string;
  readonly errors?: readonly { readonly pointer: string; readonly detail: string }[];
};

/** The boundary: what the server sends has the shape of its contract, which the server's own tests hold. */
const jsonAs = <A>(text: string): A => JSON.parse(text);

const problemOf = (status: number, text: string): Trouble => {
  const body: ProblemBody = text.startsWith('{') ? jsonAs<ProblemBody>(text) : {};
  return {
    kind: 'problem',
    status,
    code: body.code ?? null,
    says: body.detail ?? body.title ?? `HTTP ${String(status)}`,
    errors: body.errors ?? [],
  };
};

export type Sent = { readonly body?: unknown; readonly key?: string; readonly signal?: AbortSignal };

/** A proxy that lost its server answers in the server's place: to us that is nobody answering. */
const NOBODY_ANSWERED = new Set([502, 503, 504]);

export const ask = async <N extends WebRoute>(
  route: N,
  wanted: Wanted = {},
  { body, key, signal }: Sent = {},
): Promise<Answered<AnswerOf<N>>> => {
  const { method, path } = addressOf(route, wanted);
  const headers: Record<string, string> = { accept: 'application/json' };
  if (body !== undefined) headers['content-type'] = 'application/json';
  if (key !== undefined) headers['idempotency-key'] = key;
  try {
    const response = await fetch(path, {
      method,
      headers,
      body: JSON.stringify(body),
      signal: signal ?? null,
    });
    if (NOBODY_ANSWERED.has(response.status)) return { ok: false, trouble: { kind: 'unreachable' } };
    const text = await response.text();
    return response.ok
      ? { ok: true, answer: jsonAs<AnswerOf<N>>(text) }
      : { ok: false, trouble: problemOf(response.status, text) };
  } catch (fault) {
    // `fetch` says TypeError when nobody answers; anything else is a mistake of ours and must be seen.
    if (fault instanceof TypeError || signal?.aborted) return { ok: false, trouble: { kind: 'unreachable' } };
    throw fault;
  }
};
