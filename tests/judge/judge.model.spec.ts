import type { CompiledPlan, DoneWork, Hide, PlannedOperation, WorkState } from '@libs/judge';
import { isProven, judgeAsking, judgeWork, standings } from '@libs/judge';
import fc from 'fast-check';
import {
  defect,
  done,
  entryOf,
  hides,
  hold,
  nothingDone,
  operation,
  planOfOperations,
  requires,
  value,
} from '../support/judging';

/**
 * Goal: whatever is told of a section, in whatever order, an asking to cover is cleared only over work that is
 * proven, at the places it is proven, free of open nonconformances and holds.
 * Method: random plans without cycles (an operation hides and needs earlier ones only), random days of tellings,
 * defects, holds and askings; each clearance is checked against sentences written out here the long way round,
 * without a word of the judge's own code.
 */
const COUNT = 5;
const PLACES = ['kitchen', 'hall'] as const;
const idOf = (index: number): string => `op-${index}`;

const places = fc.subarray([...PLACES]);
const anyHide = (index: number): fc.Arbitrary<Hide> =>
  fc
    .record({
      hidden: fc.nat({ max: index - 1 }),
      how: fc.constantFrom('any', 'any', 'second', 'lift'),
      face: fc.nat({ max: COUNT - 1 }),
      grade: fc.constantFrom('refuse', 'refuse', 'hold', 'note'),
    })
    .map(({ hidden, how, face, grade }) =>
      hides(idOf(hidden), {
        hidden: how,
        otherFace: how === 'second' && face !== index && face !== hidden ? [idOf(face)] : [],
        grade,
      }),
    );

const anyOperation = (index: number): fc.Arbitrary<PlannedOperation> =>
  fc
    .record({
      hidden:
        index === 0
          ? fc.constant<Hide[]>([])
          : fc.uniqueArray(anyHide(index), { maxLength: 3, selector: (hide) => hide.operation }),
      needed:
        index === 0
          ? fc.constant<number[]>([])
          : fc.uniqueArray(fc.nat({ max: index - 1 }), { maxLength: 2 }),
    })
    .map(({ hidden, needed }) =>
      operation(idOf(index), {
        hides: hidden,
        requires: requires(...needed.map(idOf)),
        values: [value('edge'), value('tidy', { grade: 'note' })],
      }),
    );

const anyPlan = fc
  .tuple(...Array.from({ length: COUNT }, (_, index) => anyOperation(index)))
  .map((operations) => planOfOperations(...operations));

type Step =
  | {
      readonly is: 'tell';
      readonly operation: string;
      readonly except: readonly string[];
      readonly gives: readonly string[];
    }
  | {
      readonly is: 'open' | 'close' | 'hold' | 'release';
      readonly operation: string;
      readonly place: string | null;
    }
  | { readonly is: 'ask'; readonly operation: string; readonly except: readonly string[] };

/** Mostly done as it should be: a day of nothing but gaps clears nothing, and proves nothing of clearances. */
const mostly = <T>(usual: T, rest: fc.Arbitrary<T>): fc.Arbitrary<T> =>
  fc.oneof({ weight: 4, arbitrary: fc.constant(usual) }, { weight: 1, arbitrary: rest });

const anyOperationId = fc.nat({ max: COUNT - 1 }).map(idOf);
const anyStep: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 12,
    arbitrary: fc.record({
      is: fc.constant('tell' as const),
      operation: anyOperationId,
      except: mostly<string[]>([], places),
      gives: mostly(['edge', 'tidy'], fc.subarray(['edge', 'tidy'])),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      is: fc.constantFrom('open' as const, 'close' as const, 'hold' as const, 'release' as const),
      operation: anyOperationId,
      place: fc.constantFrom(null, ...PLACES),
    }),
  },
  {
    weight: 5,
    arbitrary: fc.record({ is: fc.constant('ask' as const), operation: anyOperationId, except: places }),
  },
);

const after = (state: WorkState, step: Step): WorkState => {
  switch (step.is) {
    case 'tell':
      return { ...state, work: { ...state.work, [step.operation]: toldWork(step) } };
    case 'open':
      return {
        ...state,
        defects: [...state.defects, defect({ operation: step.operation, place: step.place })],
      };
    case 'close':
      return { ...state, defects: state.defects.filter(({ operation: on }) => on !== step.operation) };
    case 'hold':
      return { ...state, holds: [...state.holds, hold({ operation: step.operation })] };
    case 'release':
      return { ...state, holds: state.holds.filter(({ operation: on }) => on !== step.operation) };
    case 'ask':
      return state;
  }
};

const toldWork = ({ except, gives }: Extract<Step, { is: 'tell' }>): DoneWork =>
  done({ except, missing: ['edge', 'tidy'].filter((characteristic) => !gives.includes(characteristic)) });

type Asked = readonly [WorkState, Extract<Step, { is: 'ask' }>];

/** Every state a day goes through, with the askings made in it. */
const dayOf = (steps: readonly Step[]): readonly Asked[] => {
  let state = nothingDone;
  return steps.flatMap((step) => {
    state = after(state, step);
    return step.is === 'ask' ? [[state, step] as const] : [];
  });
};

const isCleared = (plan: CompiledPlan, state: WorkState, asked: Extract<Step, { is: 'ask' }>): boolean =>
  judgeAsking(plan, state, asked).every(({ grade }) => grade !== 'refuse');

/** What an operation takes from sight for good as things stand, with the places that stay in sight. */
const takesFromSight = (
  plan: CompiledPlan,
  state: WorkState,
  cover: string,
): readonly (readonly [string, readonly string[]])[] =>
  Object.values(plan.operations).flatMap(({ id, hides: list }) =>
    list.flatMap((hide): readonly (readonly [string, readonly string[]])[] => {
      if (hide.grade !== 'refuse' || hide.hidden === 'lift') return [];
      const [face] = hide.otherFace;
      if (id === cover && face === undefined) return [[hide.operation, []]];
      if (id === cover && face !== undefined && state.work[face])
        return [[hide.operation, state.work[face].except]];
      if (face === cover && state.work[id]) return [[hide.operation, state.work[id].except]];
      return [];
    }),
  );

describe('whatever is told of a section', () => {
  it('no cover is cleared over work that is not proven, or over an open nonconformance or hold', () => {
    let cleared = 0;
    fc.assert(
      fc.property(anyPlan, fc.array(anyStep, { minLength: 1, maxLength: 40, size: 'max' }), (plan, steps) => {
        for (const [state, asked] of dayOf(steps)) {
          if (!isCleared(plan, state, asked)) continue;
          for (const [hidden, inSight] of takesFromSight(plan, state, asked.operation)) {
            cleared += 1;
            const work = state.work[hidden];
            const open = [...asked.except, ...inSight];
            expect(work).toBeDefined();
            expect(work?.missing).not.toContain('edge');
            expect(work?.except.filter((place) => !open.includes(place))).toStrictEqual([]);
            const defects = state.defects.filter(
              ({ operation: on, place }) => on === hidden && !(place !== null && open.includes(place)),
            );
            expect(defects).toStrictEqual([]);
            expect(state.holds.filter(({ operation: on }) => on === hidden)).toStrictEqual([]);
          }
        }
      }),
      { numRuns: 400 },
    );
    expect(cleared).toBeGreaterThan(200);
  });

  it('nothing is cleared that needs, hard, what is not on record', () => {
    fc.assert(
      fc.property(anyPlan, fc.array(anyStep, { maxLength: 30, size: 'max' }), (plan, steps) => {
        for (const [state, asked] of dayOf(steps)) {
          const needs = plan.operations[asked.operation]?.requires.map((edge) => edge.operation) ?? [];
          if (needs.some((need) => state.work[need] === undefined))
            expect(isCleared(plan, state, asked)).toBe(false);
        }
      }),
    );
  });

  it('telling says of order and covers what asking said, no more and no less', () => {
    const ofOrder = (rule: string): boolean => rule.startsWith('cover-hides') || rule.startsWith('required');
    fc.assert(
      fc.property(anyPlan, fc.array(anyStep, { maxLength: 30, size: 'max' }), (plan, steps) => {
        for (const [state, { operation: id, except }] of dayOf(steps)) {
          const asked = judgeAsking(plan, state, { operation: id, except });
          const told = judgeWork(plan, state, entryOf(id, { except }));
          expect(told.filter(({ rule }) => ofOrder(rule))).toStrictEqual(
            asked.filter(({ rule }) => ofOrder(rule)),
          );
        }
      }),
    );
  });

  it('what is shown as due is not refused for want of work', () => {
    fc.assert(
      fc.property(anyPlan, fc.array(anyStep, { maxLength: 30, size: 'max' }), (plan, steps) => {
        const state = steps.reduce(after, nothingDone);
        for (const { operation: id, standing, waitsFor } of standings(plan, state, 'final')) {
          if (standing !== 'due') continue;
          const refusals = judgeAsking(plan, state, { operation: id, except: [] }).filter(
            ({ rule, grade, entry, operation: missing }) =>
              grade === 'refuse' &&
              rule.endsWith('unproven') &&
              entry === id &&
              !hidesAsOtherFace(plan, id, missing),
          );
          expect(refusals).toStrictEqual([]);
          expect(waitsFor.every((need) => !isProven(plan, state, need))).toBe(true);
        }
      }),
    );
  });
});

/** Closing the other face of someone else's cover is not among what an operation itself waits for. */
const hidesAsOtherFace = (plan: CompiledPlan, face: string, hidden: string): boolean =>
  Object.values(plan.operations).some(({ hides: list }) =>
    list.some((hide) => hide.operation === hidden && hide.otherFace.includes(face)),
  );
