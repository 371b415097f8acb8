/**
 * One PIN is looked at at a time: guesses sent side by side are all counted, and hashing never takes
 * the threads away that the database writes with.
 */
export type OneAtATime = <A>(work: () => Promise<A>) => Promise<A> | undefined;

/** Undefined when `limit` are waiting already. */
export const oneAtATime = (limit: number): OneAtATime => {
  let waiting = 0;
  let last: Promise<unknown> = Promise.resolve();

  return (work) => {
    if (waiting >= limit) return undefined;
    waiting += 1;
    const done = last.then(work).finally(() => {
      waiting -= 1;
    });
    // The caller gets the failure; the next in line only waits for its end.
    last = done.catch(() => undefined);
    return done;
  };
};
