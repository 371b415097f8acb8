import { z } from 'zod';
import { exampleOf, STORY } from './examples';
import type { Route } from './routes';
import { ROUTES } from './routes';
import * as screens from './screens';
import * as shapes from './shapes';

/** JSON Schema and OpenAPI are open-ended JSON; this is as much as can be said of them here. */
type Node = { readonly [name: string]: unknown };

const GOVERNING =
  'Follow the approved design, the quality assurance manual, the inspection agencies and local codes; this record does not replace them.';

const ref = (kind: 'schemas' | 'responses' | 'parameters', name: string): Node => ({
  $ref: `#/components/${kind}/${name}`,
});

/** The OpenAPI 3.1 document of everything in ROUTES. Pure: the same table always gives the same text. */
export const openApi = (version: string): Node => ({
  openapi: '3.1.1',
  info: {
    title: 'Studbook',
    version,
    description: `The record of how each home was built: tell it what was done, ask it what is due. ${GOVERNING} The examples of what is told are one story, in this order: ${STORY.join(', ')}.`,
    license: { name: 'Apache-2.0', identifier: 'Apache-2.0' },
  },
  jsonSchemaDialect: 'https://json-schema.org/draft/2020-12/schema',
  servers: [{ url: '/' }],
  security: [{ session: [] }, { token: [] }],
  tags: tags().map((name) => ({ name })),
  paths: paths(),
  components: { schemas: schemas(), responses: responses(), parameters, securitySchemes },
});

const securitySchemes: Node = {
  session: {
    type: 'apiKey',
    in: 'cookie',
    name: 'studbook_session',
    description: 'Set by POST /api/sign-in',
  },
  token: { type: 'http', scheme: 'bearer', description: 'Made by `npx studbook token`' },
};

const idempotencyKey: Node = {
  name: 'Idempotency-Key',
  in: 'header',
  required: true,
  description:
    'Made before sending, kept until answered, sent again unchanged. The same key with the same content gives the first answer again; with other content it is refused with 422. Kept as long as the ledger.',
  schema: { type: 'string', minLength: 1, maxLength: 130 },
};

const parameters: Node = {
  LastEventId: {
    name: 'Last-Event-ID',
    in: 'header',
    required: false,
    description: 'Position of the last event heard; everything after it is sent first. Goes before `after`.',
    schema: { type: 'string', pattern: '^\\d{1,15}$' },
  },
};

const PROBLEMS = {
  BadRequest: 'Malformed: `errors` names each field by JSON pointer',
  Unauthorized: 'Neither a session nor a token that is known here',
  Forbidden: 'None of your roles may do this',
  NotFound: 'Nothing is known under this name',
  Conflict: 'Well formed, but the record has gone another way: `code` says which',
  TooLarge: 'The body is larger than this server takes',
  WrongMedia: 'The body is not of the media type this route takes',
  Unprocessable: 'Well formed, but it cannot belong to this record: `code` says why',
  TooMany: 'Too many wrong PINs: Retry-After says how long to wait',
} as const;

const responses = (): Node =>
  Object.fromEntries(
    Object.entries(PROBLEMS).map(([name, description]) => [
      name,
      { description, content: { 'application/problem+json': { schema: ref('schemas', 'Problem') } } },
    ]),
  );

const noun = (route: Route): string => route.path.split('/')[2]?.replace('.json', '') ?? '';

const tags = (): readonly string[] => [...new Set(Object.values(ROUTES).map(noun))];

const paths = (): Node => {
  const byPath: { [path: string]: { [method: string]: Node } } = {};
  for (const [name, route] of Object.entries<Route>(ROUTES)) {
    byPath[route.path] = { ...byPath[route.path], [route.method.toLowerCase()]: operation(name, route) };
  }
  return byPath;
};

const operation = (name: string, route: Route): Node => ({
  operationId: name,
  summary: route.summary,
  tags: [noun(route)],
  ...(route.access === 'anyone' ? { security: [] } : {}),
  ...(typeof route.access === 'string' ? {} : { description: `Roles: ${route.access.join(', ')}.` }),
  parameters: [
    ...pathParameters(name, route),
    ...queryParameters(name, route),
    ...headerParameters(name, route),
  ],
  ...(route.body === undefined ? {} : { requestBody: requestBody(name, route.body) }),
  ...(route.takes === undefined ? {} : { requestBody: bytesBody(route.takes) }),
  responses: { [String(route.status)]: answer(route), ...problems(name, route) },
});

const pathParameters = (name: string, route: Route): readonly Node[] =>
  [...route.path.matchAll(/\{(\w+)\}/g)].map(([, parameter = '']) => ({
    name: parameter,
    in: 'path',
    required: true,
    schema: plain(parameter === 'serial' ? shapes.Id : shapes.Reference, 'input'),
    ...exampled(exampleOf(name)?.params?.[parameter]),
  }));

const queryParameters = (name: string, route: Route): readonly Node[] =>
  Object.entries(route.query ?? {}).map(([parameter, { required, about, schema }]) => ({
    name: parameter,
    in: 'query',
    required,
    description: about,
    schema: plain(schema ?? shapes.Code, 'input'),
    ...exampled(exampleOf(name)?.query?.[parameter]),
  }));

const exampled = (example: string | undefined): Node => (example === undefined ? {} : { example });

const headerParameters = (name: string, route: Route): readonly Node[] => [
  ...(route.keyed ? [{ ...idempotencyKey, example: `"${exampleOf(name)?.key ?? `example-${name}`}"` }] : []),
  ...(route.media === 'text/event-stream' ? [ref('parameters', 'LastEventId')] : []),
];

const requestBody = (name: string, body: z.ZodType): Node => {
  const example = exampleOf(name)?.body;
  return {
    required: true,
    content: {
      'application/json': { schema: named(body, 'input'), ...(example === undefined ? {} : { example }) },
    },
  };
};

/** Bytes as they are: OpenAPI 3.1 says so by a schema that says nothing. */
const bytesBody = (media: readonly string[]): Node => ({
  required: true,
  content: Object.fromEntries(media.map((one) => [one, { schema: {} }])),
});

const takesNothing = ({ body, takes }: Route): boolean => body === undefined && takes === undefined;

const answer = (route: Route): Node => ({
  description:
    route.media === 'text/event-stream'
      ? 'Events named `ledger`: `id` is the position, `data` this'
      : route.summary,
  content: { [route.media ?? 'application/json']: { schema: named(route.answer, 'output') } },
});

const problems = (name: string, route: Route): Node => ({
  '400': ref('responses', 'BadRequest'),
  ...(route.access === 'anyone' && takesNothing(route) ? {} : { '401': ref('responses', 'Unauthorized') }),
  ...(typeof route.access === 'string' ? {} : { '403': ref('responses', 'Forbidden') }),
  ...(route.path.includes('{') || route.keyed ? { '404': ref('responses', 'NotFound') } : {}),
  ...(takesNothing(route)
    ? {}
    : { '413': ref('responses', 'TooLarge'), '415': ref('responses', 'WrongMedia') }),
  ...(route.keyed ? { '409': ref('responses', 'Conflict'), '422': ref('responses', 'Unprocessable') } : {}),
  ...(name === 'signIn' ? { '429': ref('responses', 'TooMany') } : {}),
});

/** Bodies and answers that have a name become components, so that a client generator names its types well. */
const NAMED: ReadonlyMap<z.ZodType, string> = new Map(
  Object.entries({ ...screens, ...shapes }).flatMap(([name, schema]) =>
    schema instanceof z.ZodObject ? [[schema, name] as const] : [],
  ),
);
const isSent = (name: string): boolean => name.endsWith('Request');

const named = (schema: z.ZodType, io: 'input' | 'output'): Node => {
  const name = NAMED.get(schema);
  return name === undefined ? plain(schema, io) : ref('schemas', name);
};

const plain = (schema: z.ZodType, io: 'input' | 'output'): Node => bare(z.toJSONSchema(schema, { io }));

/** What is sent is described before defaults are filled in, what is answered after. */
const schemas = (): Node => ({
  ...componentsOf(isSent, 'input'),
  ...componentsOf((name) => !isSent(name), 'output'),
});

const componentsOf = (belongs: (name: string) => boolean, io: 'input' | 'output'): Node => {
  const registry = z.registry<{ id: string }>();
  for (const [schema, id] of NAMED) if (belongs(id)) registry.add(schema, { id });

  const made = z.toJSONSchema(registry, { io, uri: (id) => `#/components/schemas/${id}` });
  return Object.fromEntries(Object.entries(made.schemas).map(([name, schema]) => [name, bare(schema)]));
};

/** The dialect is said once, on top; a component's name is its place. */
const bare = (schema: Node): Node =>
  Object.fromEntries(Object.entries(schema).filter(([name]) => name !== '$schema' && name !== '$id'));
