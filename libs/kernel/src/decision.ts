/** What was decided: the events to record (none is an answer too), or why this cannot belong to the history. */
export type Decision<E, R> =
  | { readonly ok: true; readonly events: readonly E[] }
  | { readonly ok: false; readonly rejection: R };

export const accept = <E>(...events: readonly E[]): { readonly ok: true; readonly events: readonly E[] } => ({
  ok: true,
  events,
});

export const reject = <R>(rejection: R): { readonly ok: false; readonly rejection: R } => ({
  ok: false,
  rejection,
});
