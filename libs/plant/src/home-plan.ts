import type { CompiledPlan, DoneWork, PlannedOperation, WorkState } from '@libs/judge';
import type { Unit } from '@libs/record';

/** A section of a home, with the plan it is judged by. */
export type PlannedSection = { readonly unit: Unit; readonly plan: CompiledPlan };

/**
 * The plan a home is judged by at its site: its own operations, and those of its sections that they hide or need.
 * All operations of all its sections, so that no edge from the site into the plant is lost.
 */
export const homePlan = (
  home: CompiledPlan,
  sections: readonly CompiledPlan[],
  digestOf: (plan: Omit<CompiledPlan, 'digest'>) => string,
): CompiledPlan => {
  const operations: { [id: string]: PlannedOperation } = {};
  for (const plan of [...sections, home]) {
    for (const operation of Object.values(plan.operations)) operations[operation.id] ??= operation;
  }
  const order = [...new Set([...sections, home].flatMap((plan) => plan.order))];
  const { digest: _digest, ...rest } = home;
  const plan = { ...rest, order, operations };
  return { ...plan, digest: digestOf(plan) };
};

/** What a home's sections have proven between them: an operation is, once all whose plan has it have proven it. */
export const workOfSections = (sections: readonly PlannedSection[]): WorkState => {
  const operations = new Set(sections.flatMap(({ plan }) => plan.order));
  const work = [...operations].flatMap((operation): readonly (readonly [string, DoneWork])[] => {
    const done = workOfAll(sections, operation);
    return done === undefined ? [] : [[operation, done]];
  });
  return {
    work: Object.fromEntries(work),
    defects: sections.flatMap(({ unit }) => unit.defects),
    holds: sections.flatMap(({ unit }) => unit.holds),
  };
};

const workOfAll = (sections: readonly PlannedSection[], operation: string): DoneWork | undefined => {
  const involved = sections.filter(({ plan }) => plan.operations[operation] !== undefined);
  const done = involved.flatMap(({ unit }) => unit.work[operation] ?? []);
  const last = done.at(-1);
  if (last === undefined || done.length < involved.length) return undefined;

  return {
    ...last,
    except: [...new Set(done.flatMap(({ except }) => except))],
    missing: [...new Set(done.flatMap(({ missing }) => missing))],
  };
};
