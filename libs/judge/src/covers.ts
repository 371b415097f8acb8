import type { WorkState } from './entry';
import type { CompiledPlan, Grade, Hide, PlannedOperation, Source } from './plan';
import { indexOf } from './plan-index';

/** One thing gone from sight once an operation is done, and how grave it is to hide it unproven. */
export type Closing = {
  readonly hidden: string;
  readonly grade: Grade;
  readonly source: Source;
  /** Places where it stays in sight because the other face is still open there. */
  readonly inSight: readonly string[];
};

/**
 * What an operation closes up as things stand: what it hides by itself, and what is between it and another face.
 * Of two faces the one that is closed last hides, whichever that is.
 */
export const closings = (
  plan: CompiledPlan,
  state: WorkState,
  operation: PlannedOperation,
): readonly Closing[] => [
  ...operation.hides.flatMap((hide) => closedBy(state, hide)),
  ...(indexOf(plan).otherFaceOf.get(operation.id) ?? []).flatMap(({ cover, hide }) => {
    const face = state.work[cover];
    return face === undefined ? [] : [closing(hide, face.except)];
  }),
];

const closedBy = (state: WorkState, hide: Hide): readonly Closing[] => {
  if (hide.hidden !== 'second' || hide.otherFace.length === 0) return [closing(hide, [])];

  const [first, ...others] = hide.otherFace.flatMap((face) => state.work[face] ?? []);
  if (first === undefined) return [];
  return [
    closing(
      hide,
      first.except.filter((place) => others.every(({ except }) => except.includes(place))),
    ),
  ];
};

/** What can be lifted by hand is never worth more than a note. */
const closing = ({ operation, hidden, grade, source }: Hide, inSight: readonly string[]): Closing => ({
  hidden: operation,
  grade: hidden === 'lift' ? 'note' : grade,
  source,
  inSight,
});

/** A recorded cover that took an operation from sight for good, and the places where it did not. */
export type Covered = {
  readonly cover: string;
  readonly grade: Grade;
  readonly source: Source;
  readonly except: readonly string[];
};

/**
 * The recorded covers an operation lies behind: its own, and those over a cover that is missing from the record,
 * for tape is proof that the board is up. What can be lifted by hand does not count. An inspection lies behind the
 * cover it was to come before.
 */
export const coversOver = (plan: CompiledPlan, state: WorkState, operation: string): readonly Covered[] => {
  const found: Covered[] = [];
  const seen = new Set([operation]);
  for (const id of seen) {
    for (const { cover, hide } of indexOf(plan).coversOf.get(id) ?? []) {
      const done = state.work[cover];
      if (hide.hidden === 'lift') continue;
      if (done === undefined) seen.add(cover);
      else found.push(...covered(state, cover, hide, done.except));
    }
  }
  for (const { cover, hide } of indexOf(plan).coversAfter.get(operation) ?? []) {
    const done = state.work[cover];
    if (done !== undefined) found.push(...covered(state, cover, hide, done.except));
  }
  return found;
};

const covered = (
  state: WorkState,
  cover: string,
  hide: Hide,
  except: readonly string[],
): readonly Covered[] =>
  closedBy(state, hide).map(({ grade, source, inSight }) => ({
    cover,
    grade,
    source,
    except: [...except, ...inSight],
  }));

/** The recorded covers that hide an operation, by id. */
export const coveredBy = (plan: CompiledPlan, state: WorkState, operation: string): readonly string[] => [
  ...new Set(coversOver(plan, state, operation).map(({ cover }) => cover)),
];

/** All that lies behind an operation: what it hides, and what that hides and needs, and so on. */
export const transitivelyHidden = (plan: CompiledPlan, operation: string): ReadonlySet<string> => {
  const hides = plan.operations[operation]?.hides ?? [];
  return new Set(hides.flatMap((hide) => [...indexOf(plan).beneath(hide.operation)]));
};
