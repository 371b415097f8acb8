import type { z } from 'zod';

/** Roles that may use a route; `anyone` needs no sign-in. */
export type Access = 'anyone' | 'signed-in' | readonly string[];

/** A query parameter: text that `schema` checks. */
export type Parameter = { readonly required: boolean; readonly about: string; readonly schema?: z.ZodType };

export type Route = {
  readonly method: 'GET' | 'POST';
  /** OpenAPI form: `/api/sections/{serial}`. */
  readonly path: string;
  readonly summary: string;
  readonly access: Access;
  readonly query?: { readonly [name: string]: Parameter };
  readonly body?: z.ZodType;
  /** Takes the bytes of one of these media as they are, in place of JSON. */
  readonly takes?: readonly string[];
  readonly answer: z.ZodType;
  readonly status: number;
  /** Takes an Idempotency-Key: 400 when it is missing, 422 when it was used for other content. */
  readonly keyed: boolean;
  readonly media?: string;
  /** Signed by hand before it is taken: whoever sends it shows once more who they are. What the signature stands for. */
  readonly signed?: 'inspected' | 'approved';
  /** Where only some of what is told is signed: whether this body is. */
  readonly signedWhen?: (body: unknown) => boolean;
};

export type Getting<A extends z.ZodType> = Route & { readonly answer: A };
export type Telling<B extends z.ZodType, A extends z.ZodType> = Route & {
  readonly body: B;
  readonly answer: A;
};

/** A route that asks. */
export const get = <A extends z.ZodType>(
  path: string,
  summary: string,
  answer: A,
  more: Partial<Route> = {},
): Getting<A> => ({
  method: 'GET',
  path,
  summary,
  access: 'signed-in',
  status: 200,
  keyed: false,
  ...more,
  answer,
});
/** Who tells, where a route does not say otherwise. The inspection agency tells only what is its own. */
export const TELLERS = ['station-lead', 'quality-manager', 'inspector', 'administrator', 'machine'] as const;

/** A route that tells. */
export const tell = <B extends z.ZodType, A extends z.ZodType>(
  path: string,
  summary: string,
  { body, answer }: { readonly body: B; readonly answer: A },
  more: Partial<Route> = {},
): Telling<B, A> => ({
  method: 'POST',
  path,
  summary,
  access: TELLERS,
  status: 201,
  keyed: true,
  ...more,
  body,
  answer,
});
