import type { CompiledPlan, Design, Edge, Hide, PlannedOperation, PlannedValue } from '@libs/judge';
import type { JsonObject } from '@libs/kernel';
import { canonicalJson } from '@libs/kernel';
import type { RulebookBody, ValueRow } from './body';
import type { Complain } from './complain';
import { checkDesign, isHomes } from './check-design';
import { mostSpecific } from './design-space';
import { compileCell } from './feel';
import type { Picked, Selection } from './pick';
import { orderOfStations, requiredBy, select } from './pick';
import { wrongFor } from './read-values';
import type { ResolvedPlan, Rulebook, RulebookProblem } from './rulebook';
import { needsOf, workingOrder } from './working-order';

/**
 * The build plan of one section's design (or of a home at its site: the home-scoped operations).
 * Throws nothing: a design attribute that is unknown or missing comes back as a problem.
 */
export const resolvePlan = (
  rulebook: Rulebook,
  revision: number,
  design: Design,
  sha256Hex: (text: string) => string,
): ResolvedPlan => {
  const { body } = rulebook;
  const problems: RulebookProblem[] = [...checkDesign(body, design)];
  if (problems.length > 0) return { ok: false, problems };

  const plan = compose(rulebook, revision, design, (problem) => void problems.push(problem));
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, plan: { ...plan, digest: sha256Hex(canonicalJson(asJson(plan))) } };
};

const compose = (
  rulebook: Rulebook,
  revision: number,
  design: Design,
  complain: Complain,
): Omit<CompiledPlan, 'digest'> => {
  const { body, stations, places, enforced } = rulebook;
  const selection = select(body.operations, body.covers, design);
  const order = orderOfStations(stations, selection);
  const all = [...selection.values()].map((picked) => plan(picked, selection, order));
  const worked = isHomes(body, design) ? all.filter(({ scope }) => scope === 'home') : all;
  const planned = withNeeds(worked, all).map((operation): PlannedOperation => ({
    ...operation,
    values: valuesFor(operation.id, body, design, complain),
  }));
  return {
    revision,
    design,
    stations: stations.map(({ facts: _, lotKinds: __, ...station }) => station),
    places,
    order: workingOrder(worked, order),
    operations: Object.fromEntries(planned.map((operation) => [operation.id, operation])),
    enforced,
  };
};

type WithoutValues = Omit<PlannedOperation, 'values'>;

/**
 * A home's plan is worked at the site, but what that hides or needs was done on its sections: those operations are
 * in the plan to be looked at, not in its working order.
 */
const withNeeds = (
  worked: readonly WithoutValues[],
  all: readonly WithoutValues[],
): readonly WithoutValues[] => {
  if (worked.length === all.length) return worked;
  const wanted = new Set(
    worked.flatMap((operation) => [operation.id, ...needsOf(operation), ...operation.expects]),
  );
  return all.filter(({ id }) => wanted.has(id));
};

const plan = (picked: Picked, selection: Selection, order: ReadonlyMap<string, number>): WithoutValues => {
  const { hard: _, soft, sourceOf, ...fields } = picked.fields;
  const requires = requiredBy(picked, selection, order).map(({ operation, named }): Edge => ({
    operation,
    source: sourceOf(named),
  }));
  return {
    ...fields,
    id: picked.row.id,
    requires,
    expects: soft.filter((id) => selection.has(id)),
    hides: picked.hides.flatMap(({ hide }) => hideIn(selection, hide)),
  };
};

/** Faces that do not apply to the design close nothing; with none left the cover hides by itself. */
const hideIn = (selection: Selection, hide: Hide): readonly Hide[] =>
  selection.has(hide.operation)
    ? [{ ...hide, otherFace: hide.otherFace.filter((face) => selection.has(face)) }]
    : [];

const valuesFor = (
  operation: string,
  body: RulebookBody,
  design: Design,
  complain: Complain,
): readonly PlannedValue[] =>
  (body.values.get(operation) ?? []).flatMap((table) => {
    const row = mostSpecific(table, design);
    if (row === undefined) return [];
    return row.asDesign === null ? [row.planned] : asDesigned(row, row.asDesign, design, complain);
  });

/**
 * The design gives the requirement. For a number it may be a number, which must then be met exactly, or a test
 * as the tables have it (`>= 8`); for anything else it is the very text.
 */
const asDesigned = (
  { row, planned }: ValueRow,
  detail: string,
  design: Design,
  complain: Complain,
): readonly PlannedValue[] => {
  const given = design[detail];
  const says = (text: string): readonly PlannedValue[] => {
    complain({ file: 'design', row: 1, column: detail, says: text });
    return [];
  };
  if (given === undefined || given.trim() === '')
    return says(`is not given, and row ${row} of values.csv requires it`);
  if (planned.kind !== 'measure' && planned.kind !== 'count') {
    return [{ ...planned, test: { is: 'text', text: given }, required: JSON.stringify(given) }];
  }
  const cell = compileCell(given);
  const wrong = cell.ok ? wrongFor(planned.kind, cell.test) : cell.says;
  if (!cell.ok || wrong !== undefined) return says(wrong ?? '');
  return [{ ...planned, test: cell.test, required: given }];
};

/** A plan is JSON throughout; its type does not say so, because its members are named. */
const asJson = (plan: Omit<CompiledPlan, 'digest'>): JsonObject => ({
  ...plan,
  operations: Object.fromEntries(Object.entries(plan.operations)),
});
