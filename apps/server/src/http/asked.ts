import type { BodyOf, Route, TellingName } from '@libs/contracts';
import { Code, Id, Reference } from '@libs/contracts';
import type { Sender } from '@libs/plant';
import type { ExecutionContext } from '@nestjs/common';
import { createParamDecorator } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { routeOf } from './answers';
import { idempotencyKey } from './idempotency-key';
import { parse } from './parse';
import { Problem } from './problem';
import { whoAsks } from './who';

/** What a telling route was told: parsed, and by whom. */
export type Telling<N extends TellingName> = {
  readonly body: BodyOf<N>;
  readonly sender: Sender;
  readonly params: { readonly [name: string]: string };
};
/** What a question asks for: the path's parameters `P`, and of the query those that must be given (`Q`) or may. */
export type Question<P extends string = never, Q extends string = never> = {
  readonly params: { readonly [name in P]: string };
  readonly query: { readonly [name in Q]: string } & { readonly [name: string]: string | undefined };
};

export const Told = createParamDecorator((_: unknown, context: ExecutionContext) => {
  const { route, request } = arrived(context);
  const { me, assurance, tablet, signature } = whoAsks(request);
  return {
    sender: {
      key: idempotencyKey(request.headers['idempotency-key']),
      actor: me.actor,
      assurance,
      roles: me.roles,
      tablet,
      ...(signature === undefined ? {} : { signature }),
    },
    params: parse(checksOf(route).params, request.params, ['path']),
    body: parse(route.body ?? z.undefined(), request.body),
  };
});

export const Asked = createParamDecorator((_: unknown, context: ExecutionContext) => {
  const { route, request } = arrived(context);
  return {
    params: parse(checksOf(route).params, request.params, ['path']),
    query: parse(checksOf(route).query, request.query, ['query']),
  };
});

/** The body alone, for the one route that has a body and nobody signed in. */
export const SentBody = createParamDecorator((_: unknown, context: ExecutionContext) => {
  const { route, request } = arrived(context);
  return parse(route.body ?? z.undefined(), request.body);
});

/** The bytes of a route that takes no JSON. */
export const SentBytes = createParamDecorator((_: unknown, context: ExecutionContext) => {
  const { route, request } = arrived(context);
  const { body } = request;
  if (Buffer.isBuffer(body)) return body;
  throw new Problem({
    status: 415,
    code: 'body-not-taken',
    title: 'The body is not of the media type this route takes',
    errors: [{ pointer: '#/header/content-type', detail: `must be ${(route.takes ?? []).join(', ')}` }],
  });
});

export const WhoAsks = createParamDecorator((_: unknown, context: ExecutionContext) =>
  whoAsks(context.switchToHttp().getRequest<FastifyRequest>()),
);

const arrived = (context: ExecutionContext): { readonly route: Route; readonly request: FastifyRequest } => ({
  route: routeOf(context.getHandler()),
  request: context.switchToHttp().getRequest<FastifyRequest>(),
});

type Checks = { readonly params: z.ZodType; readonly query: z.ZodType };
const checks = new WeakMap<Route, Checks>();

/** Made once a route: building schemas costs more than using them. */
const checksOf = (route: Route): Checks => {
  const made = checks.get(route) ?? { params: paramsOf(route), query: queryOf(route) };
  checks.set(route, made);
  return made;
};

const paramsOf = ({ path }: Route): z.ZodType =>
  z.strictObject(
    Object.fromEntries(
      [...path.matchAll(/\{(\w+)\}/g)].map(
        ([, name = '']) => [name, name === 'serial' ? Id : Reference] as const,
      ),
    ),
  );

/** `?search=`: a field of a form that was left empty. */
const absentIfEmpty = (given: unknown): unknown => (given === '' ? undefined : given);

const queryOf = ({ query }: Route): z.ZodType =>
  z.strictObject(
    Object.fromEntries(
      Object.entries(query ?? {}).map(([name, { required, schema = Code }]) => [
        name,
        required ? schema : z.preprocess(absentIfEmpty, schema.optional()),
      ]),
    ),
  );
