/** One line of JSON an occurrence, so that any log tool can read it. Never a name, a PIN, a token or a note. */
export type Log = (event: string, fields?: { readonly [name: string]: unknown }) => void;

export const logTo =
  (out: { readonly write: (line: string) => unknown }): Log =>
  (event, fields = {}) => {
    out.write(`${JSON.stringify({ at: new Date().toISOString(), event, ...fields })}\n`);
  };
