/** Runs one thing at a time, in the order they came. */
export type Turns = <T>(work: () => Promise<T>) => Promise<T>;

export const takingTurns = (): Turns => {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const turn = last.then(work, work);
    last = turn;
    return turn;
  };
};
