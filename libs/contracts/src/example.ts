/** An example that works against the demonstration plant. A test sends every one of them. */
export type Example = {
  /** Given where a later example names what this one led to. */
  readonly key?: string;
  readonly params?: { readonly [name: string]: string };
  readonly query?: { readonly [name: string]: string };
  readonly body?: unknown;
};
