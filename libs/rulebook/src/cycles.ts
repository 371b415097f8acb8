import type { PlannedStation } from '@libs/judge';
import type { CoverRow, OperationFields, OperationRow, RulebookBody, When } from './body';
import { ALL_DUE } from './body';
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

/** All edges of all variants and covers, whatever their conditions: too many rather than too few. */
const everythingAtOnce = (body: RulebookBody, stations: readonly PlannedStation[]): Graph => {
  const reach = reachOf(body, stations);
  return new Map(
    body.operations.map((row) => [
      row.id,
      [
        ...formsOf(row).flatMap(({ hard }) => hard.filter((id) => id !== ALL_DUE)),
        ...coversIn(body, row.id).map(({ hide }) => hide.operation),
        ...(formsOf(row).some(({ hard }) => hard.includes(ALL_DUE)) ? everyEarlier(body, row, reach) : []),
      ],
    ]),
  );
};

const formsOf = ({ fields, variants }: OperationRow): readonly OperationFields[] => [
  fields,
  ...variants.map((variant) => ({ ...fields, ...variant.fields })),
];

const coversIn = ({ covers }: RulebookBody, id: string): readonly CoverRow[] => (covers.get(id) ?? []).flat();

/** The first and the last place along the line where an operation may be done in some design. */
type Reach = ReadonlyMap<string, { readonly first: number; readonly last: number }>;

const reachOf = (body: RulebookBody, stations: readonly PlannedStation[]): Reach => {
  const everything = new Map(
    body.operations.map((row) => [
      row.id,
      { row, fields: row.fields, variant: -1, hides: coversIn(body, row.id) },
    ]),
  );
  const order = orderOfStations(stations, everything);
  const shops = new Set(stations.filter(({ kind }) => kind === 'shop').map(({ id }) => id));
  return new Map(
    body.operations.map((row) => {
      const at = formsOf(row).map(({ station }) => station);
      const places = at.map((station) => order.get(station) ?? 0);
      // What a shop feeds, and with it the shop's place, changes with the design.
      const anywhere = at.some((station) => shops.has(station));
      return [
        row.id,
        {
          first: anywhere ? -Infinity : Math.min(...places),
          last: anywhere ? Infinity : Math.max(...places),
        },
      ];
    }),
  );
};

const everyEarlier = (body: RulebookBody, row: OperationRow, reach: Reach): readonly string[] => {
  const last = reach.get(row.id)?.last ?? Infinity;
  return body.operations
    .filter(({ id }) => id !== row.id && (reach.get(id)?.first ?? -Infinity) < last)
    .map(({ id }) => id);
};

/** The operations on cycles, and between them: what is left when those that need nothing more are taken away. */
const onCycles = (graph: Graph): ReadonlySet<string> => {
  const left = new Set(graph.keys());
  const neededBy = new Map<string, string[]>();
  const open = new Map<string, number>();
  for (const [id, needs] of graph) {
    const known = [...new Set(needs)].filter((need) => graph.has(need));
    open.set(id, known.length);
    for (const need of known) neededBy.set(need, [...(neededBy.get(need) ?? []), id]);
  }
  const free = [...left].filter((id) => open.get(id) === 0);
  for (const id of free) {
    left.delete(id);
    for (const user of neededBy.get(id) ?? []) {
      const needs = (open.get(user) ?? 0) - 1;
      open.set(user, needs);
      if (needs === 0) free.push(user);
    }
  }
  return left;
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
