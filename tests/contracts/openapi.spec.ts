import type { Route } from '@libs/contracts';
import { openApi, ROUTES } from '@libs/contracts';
import Ajv2020 from 'ajv/dist/2020';
import addFormats from 'ajv-formats';

/**
 * OpenAPI 3.1 (OAI 3.1.1, sections 4.8.x): which members an object must have and which it may. Written down
 * here from the specification, because its own schema is published on the web and not as a package.
 */
const SHAPE = {
  type: 'object',
  required: ['openapi', 'info', 'paths', 'components'],
  properties: {
    openapi: { pattern: '^3\\.1\\.\\d+$' },
    info: { type: 'object', required: ['title', 'version'] },
    jsonSchemaDialect: { type: 'string', format: 'uri' },
    servers: { type: 'array', items: { type: 'object', required: ['url'] } },
    tags: { type: 'array', items: { type: 'object', required: ['name'] } },
    security: { type: 'array', items: { type: 'object', additionalProperties: { type: 'array' } } },
    paths: {
      type: 'object',
      propertyNames: { pattern: '^/' },
      additionalProperties: {
        type: 'object',
        propertyNames: { enum: ['get', 'post'] },
        additionalProperties: { $ref: '#/$defs/operation' },
      },
    },
    components: {
      type: 'object',
      required: ['schemas', 'responses', 'parameters', 'securitySchemes'],
      propertyNames: { enum: ['schemas', 'responses', 'parameters', 'securitySchemes'] },
      properties: {
        responses: { additionalProperties: { $ref: '#/$defs/response' } },
        parameters: { additionalProperties: { $ref: '#/$defs/parameter' } },
        securitySchemes: {
          additionalProperties: {
            type: 'object',
            required: ['type'],
            oneOf: [
              {
                properties: { type: { const: 'apiKey' }, in: { enum: ['query', 'header', 'cookie'] } },
                required: ['name', 'in'],
              },
              { properties: { type: { const: 'http' } }, required: ['scheme'] },
            ],
          },
        },
      },
    },
  },
  $defs: {
    reference: { type: 'object', required: ['$ref'], properties: { $ref: { pattern: '^#/components/' } } },
    operation: {
      type: 'object',
      required: ['operationId', 'responses', 'summary', 'tags', 'parameters'],
      properties: {
        parameters: {
          type: 'array',
          items: { anyOf: [{ $ref: '#/$defs/reference' }, { $ref: '#/$defs/parameter' }] },
        },
        requestBody: {
          type: 'object',
          required: ['content'],
          properties: { content: { $ref: '#/$defs/content' } },
        },
        responses: {
          type: 'object',
          propertyNames: { pattern: '^[1-5]\\d\\d$' },
          minProperties: 1,
          additionalProperties: { anyOf: [{ $ref: '#/$defs/reference' }, { $ref: '#/$defs/response' }] },
        },
      },
      additionalProperties: true,
    },
    parameter: {
      type: 'object',
      required: ['name', 'in', 'schema'],
      properties: { in: { enum: ['path', 'query', 'header', 'cookie'] }, required: { type: 'boolean' } },
      if: { properties: { in: { const: 'path' } } },
      then: { required: ['required'], properties: { required: { const: true } } },
    },
    response: {
      type: 'object',
      required: ['description'],
      properties: { content: { $ref: '#/$defs/content' } },
    },
    content: {
      type: 'object',
      minProperties: 1,
      propertyNames: { pattern: '^[a-z]+/(?:[a-z.+-]+|[*])$' },
      additionalProperties: { type: 'object', required: ['schema'] },
    },
  },
};

const ajv = addFormats(new Ajv2020({ strict: false, allErrors: true }));
const document = openApi('1.2.3');
const text = JSON.stringify(document);
const routes = Object.entries<Route>(ROUTES);

/** Every object anywhere inside, with its place. */
const within = (node: unknown, place = '#'): readonly (readonly [string, object])[] =>
  typeof node === 'object' && node !== null
    ? [
        [place, node] as const,
        ...Object.entries(node).flatMap(([name, child]) =>
          within(child, `${place}/${name.replaceAll('/', '~1')}`),
        ),
      ]
    : [];
const places = new Map(within(document));

describe('the OpenAPI document', () => {
  it('has the shape OpenAPI 3.1 asks for', () => {
    const valid = ajv.validate(SHAPE, document);
    expect(ajv.errors ?? []).toStrictEqual([]);
    expect(valid).toBe(true);
  });

  it('uses nothing that 3.0 had and 3.1 has no more', () => {
    expect(text).not.toContain('"nullable"');
    expect(text).not.toMatch(/"exclusive(?:Minimum|Maximum)":(?:true|false)/);
  });

  it('names every operation once', () => {
    const names = [...places.values()].flatMap((node) => ('operationId' in node ? [node.operationId] : []));
    expect(new Set(names)).toStrictEqual(new Set(Object.keys(ROUTES)));
    expect(names).toHaveLength(Object.keys(ROUTES).length);
  });

  it('refers to nothing that is not there', () => {
    const dangling = [...places.values()].flatMap((node) =>
      '$ref' in node && !places.has(String(node.$ref)) ? [node.$ref] : [],
    );
    expect(dangling).toStrictEqual([]);
  });

  it('holds only schemas that JSON Schema 2020-12 accepts', () => {
    const schemas = [...places.values()].flatMap((node) => ('schema' in node ? [node.schema] : []));
    expect(schemas.length).toBeGreaterThan(50);
    const wrapped = {
      $id: 'document',
      ...document,
      properties: Object.fromEntries(schemas.map((schema, n) => [`s${String(n)}`, schema])),
    };
    expect(() => ajv.compile(wrapped)).not.toThrow();
  });

  it.each(routes)(
    'describes %s with every parameter of its path, and the problems it may answer with',
    (_, route) => {
      const operation = places.get(
        `#/paths/${route.path.replaceAll('/', '~1')}/${route.method.toLowerCase()}`,
      );
      const described = JSON.stringify(operation);
      for (const [, name] of route.path.matchAll(/\{(\w+)\}/g))
        expect(described).toContain(`{"name":"${String(name)}","in":"path","required":true`);
      for (const name of Object.keys(route.query ?? {}))
        expect(described).toContain(`{"name":"${name}","in":"query"`);
      expect(described.includes('"name":"Idempotency-Key"')).toBe(route.keyed);
      expect(described.includes('#/components/responses/Unauthorized')).toBe(
        route.access !== 'anyone' || route.body !== undefined || route.takes !== undefined,
      );
      expect(described.includes('"requestBody"')).toBe(route.body !== undefined || route.takes !== undefined);
    },
  );

  it('gives the same text every time', () => {
    expect(JSON.stringify(openApi('1.2.3'))).toBe(text);
  });
});
