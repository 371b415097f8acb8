import { randomUUID } from 'node:crypto';
import { LIMITS, PHOTO_MEDIA, ROUTES } from '@libs/contracts';
import { FastifyAdapter } from '@nestjs/platform-fastify';
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { NOT_JSON, Problem, problemBody } from './problem';
import { API_HEADERS } from './security-headers';
import { answerUnparsed } from './unparsed';
import type { WebFiles } from './web-files';

/** A tablet on a poor link still gets its entry through; a sender that dribbles does not hold a socket for ever. */
const REQUEST_MS = 60_000;
/** Longest name the ledger gives (a hold's: the idempotency key and more), percent-encoded. */
const PARAM_LENGTH = 600;

/** Whose body is a whole rulebook. */
const TAKES_A_RULEBOOK: ReadonlySet<string> = new Set([ROUTES.examination.path, ROUTES.proposal.path]);

/** PEM texts. */
export type Tls = { readonly cert: string; readonly key: string };
export type Wire = {
  /** How many proxies in front of us say truly who asks; none of them by itself. */
  readonly trustedHops: number | false;
  /** Where this server speaks TLS itself. */
  readonly tls: Tls | null;
  /** Whether browsers reach it over TLS, here or in front of us. */
  readonly secure: boolean;
};

/** A year, and every name below (RFC 6797; ASVS 5.0, 3.4.1). */
const STRICT_TRANSPORT = 'max-age=31536000; includeSubDomains';

export const fastifyServer = (
  web: WebFiles | undefined,
  { trustedHops, tls, secure }: Wire,
): FastifyAdapter => {
  const adapter = new FastifyAdapter({
    bodyLimit: LIMITS.bodyBytes,
    requestTimeout: REQUEST_MS,
    routerOptions: { maxParamLength: PARAM_LENGTH },
    skipMiddie: true,
    frameworkErrors: (error: FastifyError, request: FastifyRequest, reply: FastifyReply): void => {
      // An address typed wrong is a screen's to explain, as any other that leads nowhere.
      if (web !== undefined && isScreen(request) && web(request.raw, reply.raw)) reply.hijack();
      else unreadable(error, request, reply);
    },
    clientErrorHandler: answerUnparsed,
    genReqId: () => randomUUID(),
    trustProxy: trustedHops,
    ...(tls === null ? {} : { https: { ...tls, minVersion: 'TLSv1.2' as const } }),
  });
  const server = adapter.getInstance<FastifyInstance>();
  // Only JSON is taken: a form of another site can send text/plain, and then looks like one of ours.
  server.removeContentTypeParser('text/plain');
  takePhotos(server);
  server.addHook('onRoute', (route) => {
    if (TAKES_A_RULEBOOK.has(route.url)) route.bodyLimit = LIMITS.rulebookBytes;
    if (TAKES_PHOTOS.has(route.url)) route.bodyLimit = LIMITS.photoBytes;
  });
  server.addHook('onRequest', (request, reply, next) => {
    if (secure) reply.raw.setHeader('strict-transport-security', STRICT_TRANSPORT);
    if (web !== undefined && isScreen(request) && web(request.raw, reply.raw)) {
      // A file has been found and is on its way: Fastify lets go of the answer.
      reply.hijack();
      return;
    }
    reply.headers({ ...API_HEADERS, 'x-request-id': request.id });
    next();
  });
  return adapter;
};

/** By a tablet or a desk, and by whoever holds an installer's link. */
const TAKES_PHOTOS: ReadonlySet<string> = new Set([ROUTES.photo.path, ROUTES.linkPhoto.path]);

/** A photo comes as its bytes; everywhere else a picture is no more JSON than a form is. */
const takePhotos = (server: FastifyInstance): void => {
  server.addContentTypeParser([...PHOTO_MEDIA], { parseAs: 'buffer' }, (request, body, done) => {
    if (TAKES_PHOTOS.has(request.routeOptions.url ?? '')) done(null, body);
    else done(new Problem({ status: 415, ...NOT_JSON }));
  });
};

/** An address that cannot even be decoded reaches no route and no filter. */
const unreadable = (error: FastifyError, _request: FastifyRequest, reply: FastifyReply): void => {
  const detail = error.message;
  void reply
    .status(400)
    .headers({ ...API_HEADERS, 'content-type': 'application/problem+json; charset=utf-8' })
    .send(
      JSON.stringify(
        problemBody({
          status: 400,
          code: 'request-malformed',
          title: 'The address could not be read',
          detail,
          errors: [{ pointer: '#/path', detail }],
        }),
      ),
    );
};

const isApi = (url: string): boolean => /^\/(?:api|metrics)(?:[/?]|$)/.test(url);
const isScreen = ({ method, url }: FastifyRequest): boolean =>
  (method === 'GET' || method === 'HEAD') && !isApi(url);
