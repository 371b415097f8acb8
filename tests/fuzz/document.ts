/** What of the OpenAPI document the fuzzer reads. */
export type Schema = {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly properties?: { readonly [name: string]: Schema };
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly format?: string;
};
export type ParameterObject = {
  readonly $ref?: string;
  readonly name?: string;
  readonly in?: string;
  readonly schema?: Schema;
  readonly example?: unknown;
};
type OperationObject = {
  readonly operationId: string;
  readonly parameters: readonly ParameterObject[];
  readonly requestBody?: {
    readonly content: { readonly [media: string]: { readonly schema: Schema; readonly example?: unknown } };
  };
};
export type Document = {
  readonly paths: { readonly [path: string]: { readonly [method: string]: OperationObject } };
  readonly components: { readonly schemas?: { readonly [name: string]: Schema } };
};

export type Operation = {
  readonly name: string;
  readonly method: string;
  readonly path: string;
  readonly parameters: readonly ParameterObject[];
  readonly body: Schema | undefined;
  readonly example: unknown;
};

export const operationsOf = ({ paths }: Document): readonly Operation[] =>
  Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, { operationId, parameters, requestBody }]) => {
      const json = requestBody?.content['application/json'];
      return {
        ...{ name: operationId, method: method.toUpperCase(), path, parameters },
        body: json?.schema,
        example: json?.example,
      };
    }),
  );

/** A schema that is named elsewhere in the document. */
export const resolved = (schema: Schema, { components }: Document): Schema => {
  const name = schema.$ref?.split('/').at(-1);
  return name === undefined ? schema : (components.schemas?.[name] ?? {});
};
