import type { PlannedStation } from '@libs/judge';
import type { CoverRow, OperationRow, RulebookBody, When } from './body';
import type { Complain } from './complain';
import { designsOver } from './design-space';
import type { Selection } from './pick';
import { orderOfStations, requiredBy, select } from './pick';

/** What each operation needs first: what it requires and what it hides. */
type Graph = ReadonlyMap<string, readonly string[]>;

/**
 * Complains of an operation that would have to be done before itself. Conditions and variants can put two edges
 * into the files that never meet in one design, so that a cycle in everything at once is only a suspicion:
 * it is looked for again in each design that the operations on it can tell apart.
 */
export const checkCycles = (
  body: RulebookBody,
  stations: readonly PlannedStation[],
  complain: Complain,
): void => {
  const suspects = onCycles(everythingAtOnce(body, stations));
  if (suspects.size === 0) return;

  const rows = body.operations.filter(({ id }) => suspects.has(id));
  const designs = designsOver(whensOf(rows, body.covers), body.domains);
  for (const design of designs ?? []) {
    const cycle = cycleIn(graphOf(select(rows, body.covers, design), stations));
    if (cycle !== undefined) {
      complainOf(cycle, rows, complain);
      return;
    }
  }
  if (designs === undefined) complainOf([...suspects], rows, complain);
};

const complainOf = (cycle: readonly string[], rows: readonly OperationRow[], complain: Complain): void => {
  const [first = ''] = cycle;
  const at = rows.find(({ id }) => id === first);
  const file = at?.file ?? 'operations.yaml';
  complain({
    file,
    row: at?.row ?? 1,
    column: 'hard',
    says: `needs itself: ${[...cycle, first].join(' needs ')}`,
  });
};

const whensOf = (rows: readonly OperationRow[], covers: RulebookBody['covers']): readonly When[] =>
  rows.flatMap(({ id, when, variants }) => [
    when,
    ...variants.map((variant) => variant.when),
    ...(covers.get(id) ?? []).flat().map((cover) => cover.when),
  ]);

const graphOf = (selection: Selection, stations: readonly PlannedStation[]): Graph => {
  const order = orderOfStations(stations, selection);
  return new Map(
    [...selection].map(([id, picked]) => [
      id,
      [
        ...requiredBy(picked, selection, order).map(({ operation }) => operation),
        ...picked.hides.map(({ hide }) => hide.operation).filter((hidden) => selection.has(hidden)),
      ],
    ]),
  );
};

/** All edges of all variants and covers, whatever their conditions. */
const everythingAtOnce = (body: RulebookBody, stations: readonly PlannedStation[]): Graph => {
  const always = body.operations.flatMap((row) => [row, ...variantsAsRows(row)]);
  const merged = new Map<string, string[]>();
  for (const row of always) {
    const others = body.operations.map((other) => (other.id === row.id ? row : other));
    const needs = graphOf(selectAll(others, body.covers), stations).get(row.id) ?? [];
    merged.set(row.id, [...(merged.get(row.id) ?? []), ...needs]);
  }
  return merged;
};

const variantsAsRows = (row: OperationRow): readonly OperationRow[] =>
  row.variants.map(({ fields }) => ({ ...row, fields: { ...row.fields, ...fields } }));

const selectAll = (rows: readonly OperationRow[], covers: RulebookBody['covers']): Selection =>
  new Map(rows.map((row) => [row.id, { row, fields: row.fields, hides: allCovers(row.id, covers) }]));

const allCovers = (id: string, covers: RulebookBody['covers']): readonly CoverRow[] =>
  (covers.get(id) ?? []).flat();

/** The operations that lie on some cycle: those that can reach themselves. */
const onCycles = (graph: Graph): ReadonlySet<string> =>
  new Set([...graph.keys()].filter((id) => reaches(graph, id)));

const reaches = (graph: Graph, id: string): boolean => {
  const seen = new Set(graph.get(id));
  for (const next of seen) {
    if (next === id) return true;
    (graph.get(next) ?? []).forEach((further) => seen.add(further));
  }
  return false;
};

const cycleIn = (graph: Graph): readonly string[] | undefined => {
  for (const start of graph.keys()) {
    const path = pathBack(graph, start);
    if (path !== undefined) return path;
  }
  return undefined;
};

/** The shortest way from an operation back to itself. */
const pathBack = (graph: Graph, start: string): readonly string[] | undefined => {
  const cameFrom = new Map<string, string>();
  const queue = [start];
  for (const id of queue) {
    for (const next of graph.get(id) ?? []) {
      if (next === start) return wayTo(id, cameFrom);
      if (cameFrom.has(next)) continue;
      cameFrom.set(next, id);
      queue.push(next);
    }
  }
  return undefined;
};

const wayTo = (end: string, cameFrom: ReadonlyMap<string, string>): readonly string[] => {
  const before = cameFrom.get(end);
  return before === undefined ? [end] : [...wayTo(before, cameFrom), end];
};
