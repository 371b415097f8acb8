import type { CompiledPlan, PlannedOperation } from '@libs/judge';
import { carriedOpen, isProven, lineOrder, openAt } from '@libs/judge';
import type { Unit } from './unit.state';

/** Where stations stand along the line, worked out once a plan. A shop stands just before the station it feeds. */
const ORDERS = new WeakMap<CompiledPlan, ReadonlyMap<string, number>>();

const orderOf = (plan: CompiledPlan): ReadonlyMap<string, number> => {
  const known = ORDERS.get(plan);
  if (known !== undefined) return known;

  const placed: { [id: string]: { readonly station: string; readonly needs: readonly string[] } } = {};
  for (const operation of Object.values(plan.operations)) {
    placed[operation.id] = { station: operation.station, needs: needsOf(operation) };
  }
  const order = lineOrder(plan.stations, placed);
  ORDERS.set(plan, order);
  return order;
};

const needsOf = ({ requires, expects, hides }: PlannedOperation): readonly string[] => [
  ...requires.map(({ operation }) => operation),
  ...hides.map(({ operation }) => operation),
  ...expects,
];

const ofSections = (plan: CompiledPlan): readonly PlannedOperation[] =>
  plan.order.flatMap((id) => {
    const planned = plan.operations[id];
    return planned === undefined || planned.scope === 'home' ? [] : [planned];
  });

/** What is still owed the section before it leaves the plant. */
export const openOfSection = (plan: CompiledPlan, unit: Unit): readonly string[] =>
  ofSections(plan)
    .filter(({ id }) => !isProven(plan, unit, id))
    .map(({ id }) => id);

/** What the station it stands at and all before it still owe the section, in working order. */
export const openBehind = (plan: CompiledPlan, unit: Unit, station: string | null): readonly string[] => {
  if (station === null) return [];

  const open = new Set([...carriedOpen(plan, unit, station), ...openAt(plan, unit, station)]);
  return plan.order.filter((id) => open.has(id));
};

/**
 * Line stations between where it stands and where it goes that owe it work and did none of it, each told by the first
 * operation it owes. Going back skips nothing.
 */
export const stationsSkipped = (plan: CompiledPlan, unit: Unit, to: string): readonly string[] => {
  const order = orderOf(plan);
  const from = order.get(unit.station ?? '') ?? Infinity;
  const reached = order.get(to) ?? 0;
  const worked = new Set(Object.keys(unit.work).map((id) => plan.operations[id]?.station));
  return plan.stations
    .filter(({ id, kind }) => kind === 'line' && !worked.has(id))
    .filter(({ id }) => (order.get(id) ?? 0) > from && (order.get(id) ?? 0) < reached)
    .flatMap(({ id }) => openAt(plan, unit, id).slice(0, 1));
};

/**
 * A shop has no moves of its own. Its product is in the section when the section reaches the first line station
 * with an operation that needs or expects one of the shop's; that move ends the shop's passage, once.
 */
export const shopsFedBetween = (plan: CompiledPlan, unit: Unit, to: string): readonly string[] => {
  const order = orderOf(plan);
  const reached = order.get(to);
  if (reached === undefined) return [];

  const atWork = new Set(ofSections(plan).map(({ station }) => station));
  return plan.stations
    .filter(({ id, kind }) => kind === 'shop' && atWork.has(id) && !unit.shopsLeft.includes(id))
    .filter(({ id }) => (order.get(id) ?? Infinity) < reached)
    .map(({ id }) => id);
};
