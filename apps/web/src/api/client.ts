import type { AnswerOf } from '@libs/contracts';
import { measureSkew } from '../queue/device';
import { jsonAs } from './json';
import { addressOf } from './paths';
import type { Wanted, WebRoute } from './paths';
import { signedByHand } from './signing';

/**
 * Why there is no answer. `unreachable`: nobody answered, and nothing is known of what became of the request.
 * `elsewhere`: another server has taken the plant over, and this one can record nothing any more.
 */
export type Trouble =
  | { readonly kind: 'unreachable'; readonly elsewhere?: true }
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

export type Sent = {
  readonly body?: unknown;
  readonly key?: string;
  readonly signal?: AbortSignal;
  /** Of a link: in a session's place. */
  readonly token?: string;
};

/** A proxy that lost its server answers in the server's place: to us that is nobody answering. */
const NOBODY_ANSWERED = new Set([502, 503, 504]);

const UNREACHABLE = { ok: false, trouble: { kind: 'unreachable' } } as const;

const headersFor = ({ body, key, token }: Sent): Record<string, string> => ({
  accept: 'application/json',
  ...(body === undefined ? {} : { 'content-type': 'application/json' }),
  ...(key === undefined ? {} : { 'idempotency-key': key }),
  ...(token === undefined ? {} : { authorization: `Bearer ${token}` }),
});

const signedOut = new Set<() => void>();
/** Hears that the server no longer knows us: the shift has ended, or someone signed out elsewhere. */
export const onSignedOut = (hear: () => void): (() => void) => {
  signedOut.add(hear);
  return () => signedOut.delete(hear);
};
const SIGN_IN_NEEDED = 401;

const reaching = new Set<(reached: boolean) => void>();
/** Hears with each answer, and with each that does not come, whether the server can be reached. */
export const onReach = (hear: (reached: boolean) => void): (() => void) => {
  reaching.add(hear);
  return () => reaching.delete(hear);
};
const reached = (is: boolean): void => reaching.forEach((hear) => hear(is));

/** Whoever keeps entries until they are recorded keeps them here too: the other server knows their keys. */
const nobodyIn = async (response: Response): Promise<Answered<never>> => {
  const text = await response.text();
  const isElsewhere = text.startsWith('{') && jsonAs<ProblemBody>(text).code === 'writer-elsewhere';
  return isElsewhere ? { ok: false, trouble: { kind: 'unreachable', elsewhere: true } } : UNREACHABLE;
};

const answerIn = async <N extends WebRoute>(response: Response): Promise<Answered<AnswerOf<N>>> => {
  reached(!NOBODY_ANSWERED.has(response.status));
  if (NOBODY_ANSWERED.has(response.status)) return nobodyIn(response);
  if (response.status === SIGN_IN_NEEDED) signedOut.forEach((hear) => hear());
  const text = await response.text();
  return response.ok
    ? { ok: true, answer: jsonAs<AnswerOf<N>>(text) }
    : { ok: false, trouble: problemOf(response.status, text) };
};

/** What is signed by hand is sent once more when it was. */
export const ask = async <N extends WebRoute>(
  route: N,
  wanted: Wanted = {},
  sent: Sent = {},
): Promise<Answered<AnswerOf<N>>> => {
  const first = await askOnce(route, wanted, sent);
  const unsigned = !first.ok && first.trouble.kind === 'problem' && first.trouble.code === 'signature-needed';
  if (!unsigned || sent.key === undefined || !(await signedByHand(sent.key))) return first;
  return askOnce(route, wanted, sent);
};

const askOnce = async <N extends WebRoute>(
  route: N,
  wanted: Wanted,
  sent: Sent,
): Promise<Answered<AnswerOf<N>>> => {
  const { method, path } = addressOf(route, wanted);
  const { body, signal = null } = sent;
  const askedMs = Date.now();
  try {
    const response = await fetch(path, {
      method,
      headers: headersFor(sent),
      body: JSON.stringify(body),
      signal,
    });
    measureSkew(response.headers.get('date'), askedMs, Date.now());
    return await answerIn<N>(response);
  } catch (fault) {
    // `fetch` says TypeError when nobody answers; anything else is a mistake of ours and must be seen.
    if (signal?.aborted === true) return UNREACHABLE;
    if (!(fault instanceof TypeError)) throw fault;
    reached(false);
    return UNREACHABLE;
  }
};
