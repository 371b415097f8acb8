import rateLimit from '@fastify/rate-limit';
import { ROUTES } from '@libs/contracts';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { Door } from './door';
import { Problem } from './problem';
import { bearerIn } from './bearer';

const MINUTE_MS = 60_000;
const WINDOW_MS = 10_000;

/** A shift of leads signs in within some minutes, all behind one address. */
const SIGN_INS_A_MINUTE = 120;
/** More than any screen of ours asks for, with a dozen of them behind one address. */
const ASKED_A_WINDOW = 1_500;

/** Where something can be guessed. */
const GUESSED_AT: ReadonlySet<string> = new Set(
  [
    ROUTES.signIn,
    ROUTES.setUp,
    ROUTES.passkeySignIn,
    ROUTES.signInQuestion,
    ROUTES.invitationTaken,
    ROUTES.bind,
    ROUTES.signature,
    ROUTES.ownPassword,
    ROUTES.codes,
    ROUTES.codesConfirm,
    ROUTES.codesEnd,
    ROUTES.passkeyQuestion,
    ROUTES.linkBook,
    ROUTES.linkSite,
    ROUTES.linkWork,
    ROUTES.linkPhoto,
  ].map(({ path }) => path),
);

/**
 * How often one sender may ask. Programs with a token are let through: they are few, known, and an import or a gauge is
 * meant to be fast. A session is counted by itself, so that one tablet does not use up its neighbours' share. Only what
 * the plant knows counts as either: whoever makes up a token or a cookie for each request is counted by address.
 */
export const limitRates = async (server: FastifyInstance, door: Door): Promise<void> => {
  const senderOf = async ({ headers, ip }: FastifyRequest): Promise<string> => {
    const secret = bearerIn(headers.authorization) ?? door.sessionIn(headers.cookie);
    const holder = secret === undefined ? undefined : await door.access.whoIs(secret);
    if (holder === undefined) return ip;
    return holder.kind === 'token' ? `${TOKEN}${holder.actor}` : `session ${String(secret)}`;
  };
  server.addHook('onRoute', (route) => {
    if (route.method !== 'POST' || !GUESSED_AT.has(route.url)) return;
    const byAddress = {
      max: SIGN_INS_A_MINUTE,
      timeWindow: MINUTE_MS,
      keyGenerator: addressOf,
      allowList: [],
    };
    route.config = { ...route.config, rateLimit: byAddress };
  });
  await server.register(rateLimit, {
    global: true,
    max: ASKED_A_WINDOW,
    timeWindow: WINDOW_MS,
    keyGenerator: senderOf,
    allowList: (_request, key) => key.startsWith(TOKEN),
    errorResponseBuilder: (_request, { ttl }) => tooOften(ttl),
  });
};

const TOKEN = 'token ';
const addressOf = ({ ip }: FastifyRequest): string => ip;

const tooOften = (ms: number): Problem =>
  new Problem({
    status: 429,
    code: 'too-often',
    title: 'Asked too often',
    detail: `Try again in ${String(Math.ceil(ms / 1_000))} seconds.`,
    headers: { 'retry-after': String(Math.ceil(ms / 1_000)) },
  });
