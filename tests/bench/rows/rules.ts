import { judgeWork, passes } from '@libs/judge';
import { readRulebook } from '@libs/rulebook';
import type { Row } from '../bench';
import { bigFiles, dayIn, designs, planFrom, rulebookFrom, spentMs } from '../big-rulebook';

const LOAD_GOAL_MS = 1_000;
const RESOLVE_GOAL_MS = 5;
const ENTRY_GOAL_US = 50;
/** Ours at least twenty times as fast. */
const JUDGE_GOAL = 20;
const RESOLVE_ROUNDS = 4;

const noClose = (): Promise<void> => Promise.resolve();

/** 400 operations and 5 000 rows of required values, read and checked whole. */
export const rulebookLoad: Row = {
  name: 'rulebook-load',
  unit: 'ms',
  better: 'less',
  peerName: 'the goal',
  goal: 1,
  prepare: () => {
    const files = bigFiles();
    const ours = (): Promise<number> => {
      const began = spentMs();
      if (!readRulebook(files).ok) throw new Error('The rulebook to be measured has problems');
      return Promise.resolve(spentMs() - began);
    };
    return Promise.resolve({ ours, peer: () => Promise.resolve(LOAD_GOAL_MS), close: noClose });
  },
};

/** A plan for each of 18 designs in turn, by that rulebook; the first round, on which nothing is known yet, warms up. */
export const planResolve: Row = {
  name: 'plan-resolve',
  unit: 'ms',
  better: 'less',
  peerName: 'the goal',
  goal: 1,
  prepare: () => {
    const rulebook = rulebookFrom(bigFiles());
    const ours = (): Promise<number> => {
      const began = spentMs();
      for (let round = 0; round < RESOLVE_ROUNDS; round += 1) {
        for (const design of designs) planFrom(rulebook, design);
      }
      return Promise.resolve((spentMs() - began) / (RESOLVE_ROUNDS * designs.length));
    };
    return Promise.resolve({ ours, peer: () => Promise.resolve(RESOLVE_GOAL_MS), close: noClose });
  },
};

/** An entry of each operation of that plan, judged whole: its order, covers, signature, lots and values. */
export const judgeEntry: Row = {
  name: 'judge-entry',
  unit: 'us an entry',
  better: 'less',
  peerName: 'the goal',
  goal: 1,
  prepare: () => {
    const plan = planFrom(rulebookFrom(bigFiles()));
    const { state, entries } = dayIn(plan);
    const ours = (): Promise<number> =>
      Promise.resolve(
        usEach(entries.length, () => entries.forEach((entry) => judgeWork(plan, state, entry))),
      );
    return Promise.resolve({ ours, peer: () => Promise.resolve(ENTRY_GOAL_US), close: noClose });
  },
};

/** The required values of those entries, by the compiled cell and by a FEEL interpreter from the cell's text. */
export const judge: Row = {
  name: 'judge',
  unit: 'us a value',
  better: 'faster',
  peerName: 'feelin, the same cells',
  goal: JUDGE_GOAL,
  prepare: async () => {
    const { unaryTest } = await import('feelin');
    const plan = planFrom(rulebookFrom(bigFiles()));
    const cells = dayIn(plan).entries.flatMap((entry) =>
      entry.values.map(({ value, unit }, at) => ({
        value,
        unit,
        planned: plan.operations[entry.operation]?.values[at],
      })),
    );
    const known = cells.flatMap(({ planned, ...given }) =>
      planned === undefined ? [] : [{ planned, ...given }],
    );
    const ours = (): void =>
      known.forEach(({ planned, value, unit }) => passes(planned.test, value, unit, planned.unit));
    const peer = (): void =>
      known.forEach(({ planned, value }) => unaryTest(planned.required, { '?': Number(value) }));
    return {
      ours: () => Promise.resolve(usEach(known.length, ours)),
      peer: () => Promise.resolve(usEach(known.length, peer)),
      close: noClose,
    };
  },
};

/** Ten times over, so that what is compiled on the way does not count for more than it will in a plant. */
const TIMES = 10;

const usEach = (count: number, work: () => void): number => {
  const began = spentMs();
  for (let time = 0; time < TIMES; time += 1) work();
  return ((spentMs() - began) * 1_000) / (TIMES * count);
};
