/** One thing measured, beside something outside the project doing the like in the same run. */
export type Row = {
  readonly name: string;
  readonly unit: string;
  /**
   * More is better for a rate, less for a time. `faster`: a time too, of another way to the same answer, and the ratio
   * says how many times as fast ours is.
   */
  readonly better: 'more' | 'less' | 'faster';
  readonly peerName: string;
  /** Ours against the peer's: what it must reach, as a bound where less is better, else as a multiple. */
  readonly goal: number;
  readonly prepare: (size: number) => Promise<Contest>;
};

/** Each call does the work once, on ground of its own, and says how it went in the row's unit. */
export type Contest = {
  readonly ours: () => Promise<number>;
  readonly peer: () => Promise<number>;
  readonly close: () => Promise<void>;
};

export type Result = {
  readonly name: string;
  readonly ours: number;
  readonly peer: number;
  readonly peerName: string;
  readonly unit: string;
  readonly ratio: number;
  readonly goal: number;
  readonly met: boolean;
};

/** Odd, so that a median is one of them. */
const ROUNDS = 5;

/** Ours and the peer's by turns, after one round of each to warm up, so that a busy moment strikes both. */
export const measure = async (row: Row, size: number): Promise<Result> => {
  const contest = await row.prepare(size);
  try {
    await contest.ours();
    await contest.peer();
    const rounds = { ours: new Array<number>(), peer: new Array<number>() };
    for (let round = 0; round < ROUNDS; round += 1) {
      rounds.ours.push(await contest.ours());
      rounds.peer.push(await contest.peer());
    }
    return resultOf(row, median(rounds.ours), median(rounds.peer));
  } finally {
    await contest.close();
  }
};

const resultOf = ({ name, unit, better, peerName, goal }: Row, ours: number, peer: number): Result => {
  const ratio = better === 'faster' ? peer / ours : ours / peer;
  return {
    name,
    ours,
    peer,
    peerName,
    unit,
    ratio,
    goal,
    met: better === 'less' ? ratio <= goal : ratio >= goal,
  };
};

export const median = (numbers: readonly number[]): number => {
  const sorted = [...numbers].sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)];
  if (middle === undefined) throw new Error('There is no median of nothing');
  return middle;
};

/** How many a second, for so many done by `work`. */
export const perSecond = async (count: number, work: () => Promise<void>): Promise<number> => {
  const began = performance.now();
  await work();
  return (count * 1_000) / (performance.now() - began);
};

/** So many callers, each of whom asks again as soon as it is answered, until all is done. */
export const callersAsk = async (
  callers: number,
  count: number,
  ask: (n: number) => Promise<void>,
): Promise<void> => {
  let next = 0;
  const caller = async (): Promise<void> => {
    while (next < count) {
      next += 1;
      await ask(next);
    }
  };
  await Promise.all(Array.from({ length: callers }, caller));
};
