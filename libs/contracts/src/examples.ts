/** An example that works against the demonstration plant. A test sends every one of them. */
export type Example = {
  readonly params?: { readonly [name: string]: string };
  readonly query?: { readonly [name: string]: string };
  readonly body?: unknown;
};

const EXAMPLES: { readonly [route: string]: Example } = {
  yield: { query: { by: 'station' } },
};

export const exampleOf = (route: string): Example | undefined => EXAMPLES[route];
