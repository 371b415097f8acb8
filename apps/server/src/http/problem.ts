/** Where the trouble is: a JSON pointer into the body, or into `path`, `query` or `header`. */
export type Trouble = { readonly pointer: string; readonly detail: string };

export type ProblemFields = {
  readonly status: number;
  /** Kebab-case and stable: programs go by this, people by `title` and `detail`. */
  readonly code: string;
  readonly title: string;
  readonly detail?: string;
  readonly errors?: readonly Trouble[];
  readonly headers?: { readonly [name: string]: string };
  /** Extension members (RFC 9457, 3.2). */
  readonly more?: { readonly [name: string]: unknown };
};

/** An answer that is no: thrown anywhere at the edge, turned into RFC 9457 problem details by one filter. */
export class Problem extends Error {
  constructor(readonly fields: ProblemFields) {
    super(fields.title);
    this.name = 'Problem';
  }
}

export const problemBody = ({ status, code, title, detail, errors, more }: ProblemFields): object => ({
  ...more,
  type: `urn:studbook:problem:${code}`,
  title,
  status,
  code,
  ...(detail === undefined ? {} : { detail }),
  ...(errors === undefined ? {} : { errors }),
});

export const badRequest = (title: string, errors: readonly Trouble[]): Problem =>
  new Problem({
    status: 400,
    code: 'request-malformed',
    title,
    detail: errors.map(({ pointer, detail }) => `${pointer}: ${detail}`).join('; '),
    errors,
  });

export const NOT_JSON = {
  code: 'body-not-json',
  title: 'The body must be JSON',
  errors: [{ pointer: '#/header/content-type', detail: 'must be application/json' }],
} as const;

/** `#/values/0/unit`, as RFC 6901 writes it inside a URI. */
export const pointerOf = (path: readonly PropertyKey[]): string =>
  `#${path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')}`;
