import { request as plainRequest } from 'node:http';
import type { IncomingMessage, RequestOptions } from 'node:http';
import { request as tlsRequest } from 'node:https';
import { isIP } from 'node:net';
import { AddressForbidden } from './addresses';
import type { Reach } from './addresses';

/** How a try ended. `refused`: the receiver read it and will not have it, so that trying for days is of no use. */
export type Tried =
  | { readonly ok: true }
  | {
      readonly ok: false;
      readonly why: string;
      readonly how: 'unreachable' | 'refused' | 'gone' | 'forbidden';
      /** As the receiver asked (Retry-After), milliseconds. */
      readonly waitMs?: number;
    };

/** A receiver that has not answered by now answers too late: it is tried again. */
const ANSWER_WITHIN_MS = 10_000;
/** Nothing of an answer's body is used; more than this is not even read. */
const ANSWER_AT_MOST = 16 * 1024;

export type Post = {
  readonly url: string;
  readonly body: string;
  readonly headers: { readonly [header: string]: string };
};

const LONGEST_ADDRESS = 2_000;

/** Refused before anything is sent: what is no web address, or one that must not be posted to. */
export const targetProblem = (
  text: string,
  reach: Reach,
): 'not-a-web-address' | 'own-network' | 'tls-needed' | null => {
  const url = webAddress(text);
  if (url === null) return 'not-a-web-address';
  const host = hostOf(url);
  const isNumber = isIP(host) !== 0;
  if (isNumber && !reach.mayReach(host)) return 'own-network';
  // A name may be resolved to anything, so plain HTTP goes only to addresses that were opened.
  if (url.protocol === 'http:' && !(isNumber && reach.isOpened(host))) return 'tls-needed';
  return null;
};

const webAddress = (text: string): URL | null => {
  if (text.length > LONGEST_ADDRESS || !URL.canParse(text)) return null;
  const url = new URL(text);
  const isWeb = url.protocol === 'https:' || url.protocol === 'http:';
  // Who asks is shown by the signature; a password in an address would be shown on a screen.
  return isWeb && url.username + url.password + url.hash === '' ? url : null;
};

const hostOf = ({ hostname }: URL): string => hostname.replace(/^\[|\]$/g, '');

/** One try, with a limit on its time and on what is read. Redirects are not followed: they lead past all checks. */
export const post = ({ url, body, headers }: Post, reach: Reach): Promise<Tried> => {
  const problem = targetProblem(url, reach);
  if (problem !== null) return Promise.resolve({ ok: false, how: 'forbidden', why: problem });
  const bytes = Buffer.from(body, 'utf8');
  const options: RequestOptions = {
    method: 'POST',
    headers: {
      'content-type': 'application/cloudevents+json; charset=utf-8',
      'content-length': String(bytes.length),
      'user-agent': 'Studbook',
      ...headers,
    },
    lookup: reach.lookup,
    agent: false,
    signal: AbortSignal.timeout(ANSWER_WITHIN_MS),
  };
  return new Promise((done) => {
    const send = url.startsWith('https:') ? tlsRequest : plainRequest;
    const sent = send(url, options, (answer) => {
      done(triedOf(answer));
      drain(answer);
    });
    sent.on('error', (fault) => done(faultOf(fault)));
    sent.end(bytes);
  });
};

/** Read to its end where it is short, so that the receiver sees no broken connection. */
const drain = (answer: IncomingMessage): void => {
  let read = 0;
  answer.on('data', (chunk: Buffer) => {
    read += chunk.length;
    if (read > ANSWER_AT_MOST) answer.destroy();
  });
  // The answer's status has been taken; what becomes of its body is of no account.
  answer.on('error', () => answer.destroy());
};

const faultOf = (fault: Error): Tried =>
  fault instanceof AddressForbidden
    ? { ok: false, how: 'forbidden', why: 'own-network' }
    : { ok: false, how: 'unreachable', why: reasonOf(fault) };

/** A code that says what happened, never the receiver's own words: they are shown on a screen. */
const reasonOf = (fault: Error & { readonly code?: string }): string =>
  fault.name === 'AbortError' || fault.name === 'TimeoutError' ? 'no-answer' : (fault.code ?? fault.name);

/** Statuses that a receiver may get over by itself. */
const PASSING: ReadonlySet<number> = new Set([408, 425, 429]);

const triedOf = ({ statusCode = 0, headers }: IncomingMessage): Tried => {
  if (statusCode >= 200 && statusCode < 300) return { ok: true };
  const why = `http-${String(statusCode)}`;
  if (statusCode === 410) return { ok: false, how: 'gone', why };
  const isPassing = statusCode >= 500 || PASSING.has(statusCode);
  const asked = headers['retry-after'];
  const waitMs = asked !== undefined && /^\d{1,6}$/.test(asked) ? Number(asked) * 1_000 : undefined;
  return {
    ok: false,
    how: isPassing ? 'unreachable' : 'refused',
    why,
    ...(waitMs === undefined ? {} : { waitMs }),
  };
};
