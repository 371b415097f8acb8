import type { CompiledPlan, Design, PlannedOperation } from '@libs/judge';
import type { Complain } from './complain';
import { checkDesign, isHomes } from './check-design';
import { orderOfStations, select } from './pick';
import { planDigest } from './plan-text';
import { plannedOperation } from './planned-operation';
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
  return { ok: true, plan: { ...plan, digest: planDigest(plan, sha256Hex) } };
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
  const ground = { body, design, selection, order };
  const all = [...selection.values()].map((picked) => plannedOperation(picked, ground, complain));
  const worked = isHomes(body, design) ? all.filter(({ scope }) => scope === 'home') : all;
  const planned = withNeeds(worked, all);
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

/**
 * A home's plan is worked at the site, but what that hides or needs was done on its sections: those operations are
 * in the plan to be looked at, not in its working order.
 */
const withNeeds = (
  worked: readonly PlannedOperation[],
  all: readonly PlannedOperation[],
): readonly PlannedOperation[] => {
  if (worked.length === all.length) return worked;
  const wanted = new Set(
    worked.flatMap((operation) => [operation.id, ...needsOf(operation), ...operation.expects]),
  );
  return all.filter(({ id }) => wanted.has(id));
};
