import rateLimit from '@fastify/rate-limit';
import { ROUTES } from '@libs/contracts';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { Problem } from './problem';
import { sessionIn } from './session-cookie';

const MINUTE_MS = 60_000;
const WINDOW_MS = 10_000;

/** A shift of leads signs in within some minutes, all behind one address. */
const SIGN_INS_A_MINUTE = 120;
/** More than any screen of ours asks for, with a dozen of them behind one address. */
const ASKED_A_WINDOW = 1_500;

const GUESSED_AT: ReadonlySet<string> = new Set([ROUTES.signIn.path, ROUTES.setUp.path]);

/**
 * How often one sender may ask. Programs with a token are let through: they are few, known, and an import or a gauge is
 * meant to be fast. A session is counted by itself, so that one tablet does not use up its neighbours' share.
 */
export const limitRates = async (server: FastifyInstance): Promise<void> => {
  server.addHook('onRoute', (route) => {
    if (route.method !== 'POST' || !GUESSED_AT.has(route.url)) return;
    const byAddress = { max: SIGN_INS_A_MINUTE, timeWindow: MINUTE_MS, keyGenerator: addressOf };
    route.config = { ...route.config, rateLimit: byAddress };
  });
  await server.register(rateLimit, {
    global: true,
    max: ASKED_A_WINDOW,
    timeWindow: WINDOW_MS,
    keyGenerator: senderOf,
    allowList: (request) => request.headers.authorization !== undefined,
    errorResponseBuilder: (_request, { ttl }) => tooOften(ttl),
  });
};

const addressOf = ({ ip }: FastifyRequest): string => ip;
const senderOf = (request: FastifyRequest): string => sessionIn(request.headers.cookie) ?? request.ip;

const tooOften = (ms: number): Problem =>
  new Problem({
    status: 429,
    code: 'too-often',
    title: 'Asked too often',
    detail: `Try again in ${String(Math.ceil(ms / 1_000))} seconds.`,
    headers: { 'retry-after': String(Math.ceil(ms / 1_000)) },
  });
