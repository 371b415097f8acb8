/** What no answer may show: where the program lies, how it failed, what it keeps. */
const LEAKS: readonly RegExp[] = [
  /node_modules/,
  /\n\s+at .+:\d+:\d+\)?/,
  /\.[jt]s:\d+:\d+/,
  /\/(?:work|home|tmp|usr)\/[\w.-]+\//,
  /SQLITE_|SELECT .+ FROM|INSERT INTO/,
  /\$argon2id\$/,
  /"hash":/,
  /-----BEGIN/,
  /\[object Object\]/,
];

export type Answer = {
  readonly status: number;
  readonly type: string;
  readonly text: string;
  readonly headers: Headers;
};

/** Undefined: nothing to say against it. */
export const faultOf = ({ status, type, text, headers }: Answer): string | undefined => {
  if (status >= 500) return `status ${String(status)}`;
  const leak = LEAKS.find((one) => one.test(text));
  if (leak !== undefined) return `the answer shows ${String(leak)}`;
  if (headers.get('x-content-type-options') !== 'nosniff') return 'no nosniff';
  if (status >= 400 && !type.startsWith('application/problem+json')) return `a refusal as ${type}`;
  if (status >= 400 && !isProblem(text)) return 'a refusal that is no problem document';
  return undefined;
};

const isProblem = (text: string): boolean => {
  const body: unknown = JSON.parse(text);
  return typeof body === 'object' && body !== null && 'status' in body && 'title' in body && 'code' in body;
};
