import { lineOrder } from './line-order';
import type { CompiledPlan, Hide, PlannedOperation } from './plan';

/** A cover and one thing it hides. */
export type CoverOf = { readonly cover: string; readonly hide: Hide };

/** A plan seen from the other side: what hides an operation, what lies beneath one. Worked out once a plan. */
export type PlanIndex = {
  readonly coversOf: ReadonlyMap<string, readonly CoverOf[]>;
  /** Covers that hide something once this operation has closed the other face. */
  readonly otherFaceOf: ReadonlyMap<string, readonly CoverOf[]>;
  /** Covers that an inspection comes before: they ask for it, and hide what it looks at. */
  readonly coversAfter: ReadonlyMap<string, readonly CoverOf[]>;
  readonly stationOrder: ReadonlyMap<string, number>;
  /** An operation with all it hides and requires, and what those do, and so on. */
  readonly beneath: (operation: string) => ReadonlySet<string>;
};

const INDEXES = new WeakMap<CompiledPlan, PlanIndex>();

export const indexOf = (plan: CompiledPlan): PlanIndex => {
  const known = INDEXES.get(plan);
  if (known !== undefined) return known;

  const index = makeIndex(plan);
  INDEXES.set(plan, index);
  return index;
};

const makeIndex = (plan: CompiledPlan): PlanIndex => {
  const coversOf = new Map<string, CoverOf[]>();
  const otherFaceOf = new Map<string, CoverOf[]>();
  for (const { id, hides } of Object.values(plan.operations)) {
    for (const hide of hides) {
      const coverOf = { cover: id, hide };
      push(coversOf, hide.operation, coverOf);
      if (hide.hidden === 'second') hide.otherFace.forEach((face) => push(otherFaceOf, face, coverOf));
    }
  }
  const coversAfter = coversAfterIn(plan);
  return { coversOf, otherFaceOf, coversAfter, stationOrder: stationOrderOf(plan), beneath: beneathIn(plan) };
};

/** An inspection of what is in sight at the end is asked for by no cover over it. */
const coversAfterIn = (plan: CompiledPlan): PlanIndex['coversAfter'] => {
  const covers = new Map<string, CoverOf[]>();
  for (const { id, hides, requires } of Object.values(plan.operations)) {
    for (const { operation } of requires) {
      const inspection = plan.operations[operation];
      if (inspection?.entry !== 'I') continue;
      const looksAt = new Set(inspection.requires.map((edge) => edge.operation));
      const hide = hides.find(({ operation: hidden, hidden: how }) => how !== 'lift' && looksAt.has(hidden));
      if (hide !== undefined) push(covers, operation, { cover: id, hide });
    }
  }
  return covers;
};

const push = (lists: Map<string, CoverOf[]>, key: string, item: CoverOf): void => {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [item]);
  else list.push(item);
};

const stationOrderOf = (plan: CompiledPlan): ReadonlyMap<string, number> =>
  lineOrder(
    plan.stations,
    Object.fromEntries(
      Object.values(plan.operations).map((operation) => [
        operation.id,
        { station: operation.station, needs: [...needsOf(operation), ...operation.expects] },
      ]),
    ),
  );

const needsOf = (operation: PlannedOperation): readonly string[] => [
  ...operation.hides.map((hide) => hide.operation),
  ...operation.requires.map((edge) => edge.operation),
];

const beneathIn = (plan: CompiledPlan): PlanIndex['beneath'] => {
  const known = new Map<string, ReadonlySet<string>>();
  return (operation) => {
    const before = known.get(operation);
    if (before !== undefined) return before;

    const found = new Set([operation]);
    for (const id of found) {
      const below = plan.operations[id];
      if (below !== undefined) needsOf(below).forEach((need) => found.add(need));
    }
    known.set(operation, found);
    return found;
  };
};
