import type { Design, PlannedStation } from '@libs/judge';
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
  for (const suspects of loopsIn(everythingAtOnce(body, stations))) {
    const rows = body.operations.filter(({ id }) => suspects.has(id));
    const placing = rows.some(isAfterAllDue) ? placingShops(body, stations) : [];
    const told = [...new Set([...rows, ...placing])];
    const designs = designsOver(whensOf(told, body.covers), body.domains);
    const cycle = designs === undefined ? undefined : cycleInAny(designs, { body, stations, told, suspects });
    if (cycle !== undefined) complainOf(cycle, rows, complain);
    if (designs === undefined) complainOfDoubt([...suspects], rows, complain);
  }
};

const isAfterAllDue = (row: OperationRow): boolean => formsOf(row).some(({ hard }) => hard.includes(ALL_DUE));

/** Where a shop stands is told by all that needs its work; without that, `all-due` would find it in a wrong place. */
const placingShops = (body: RulebookBody, stations: readonly PlannedStation[]): readonly OperationRow[] => {
  const shops = new Set(stations.filter(({ kind }) => kind === 'shop').map(({ id }) => id));
  const made = new Set(
    body.operations
      .filter((row) => formsOf(row).some(({ station }) => shops.has(station)))
      .map(({ id }) => id),
  );
  return body.operations.filter(
    (row) => made.has(row.id) || needsInAnyForm(body, row).some((need) => made.has(need)),
  );
};

const needsInAnyForm = (body: RulebookBody, row: OperationRow): readonly string[] => [
  ...formsOf(row).flatMap(({ hard, soft }) => [...hard, ...soft]),
  ...coversIn(body, row.id).map(({ hide }) => hide.operation),
];

type Suspicion = {
  readonly body: RulebookBody;
  readonly stations: readonly PlannedStation[];
  /** Those that tell the designs apart: the suspects, and what places the shops they look back to. */
  readonly told: readonly OperationRow[];
  readonly suspects: ReadonlySet<string>;
};

const cycleInAny = (
  designs: readonly Design[],
  { body, stations, told, suspects }: Suspicion,
): readonly string[] | undefined => {
  for (const design of designs) {
    const cycle = cycleIn(graphOf(select(told, body.covers, design), stations), suspects);
    if (cycle !== undefined) return cycle;
  }
  return undefined;
};

const complainOf = (cycle: readonly string[], rows: readonly OperationRow[], complain: Complain): void => {
  const [first = ''] = cycle;
  complain({
    ...placeOf(first, rows),
    column: 'hard',
    says: `needs itself: ${[...cycle, first].join(' needs ')}`,
  });
};

/** A loop that could not be looked at in every design may be none; a plan with a loop in it could never be worked. */
const complainOfDoubt = (
  suspects: readonly string[],
  rows: readonly OperationRow[],
  complain: Complain,
): void =>
  complain({
    ...placeOf(suspects[0] ?? '', rows),
    column: 'hard',
    says: `may need itself, and has too many conditions to be checked: ${suspects.join(', ')}`,
  });

const placeOf = (
  id: string,
  rows: readonly OperationRow[],
): { readonly file: string; readonly row: number } => {
  const { file = 'operations.yaml', row = 1 } = rows.find((one) => one.id === id) ?? {};
  return { file, row };
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

/** Operations that reach each other in a graph, in groups: every loop lies within one of them. */
const loopsIn = (graph: Graph): readonly ReadonlySet<string>[] => {
  const left = new Set(inLoopsOrBetween(graph));
  const loops: ReadonlySet<string>[] = [];
  for (const id of left) {
    const ahead = reachedFrom(graph, id, left);
    const loop = new Set([...ahead].filter((other) => reachedFrom(graph, other, left).has(id)));
    loop.forEach((one) => left.delete(one));
    left.delete(id);
    if (loop.size > 0) loops.push(loop);
  }
  return loops;
};

/** Itself only where there is a way back. */
const reachedFrom = (graph: Graph, id: string, within: ReadonlySet<string>): ReadonlySet<string> => {
  const reached = new Set(graph.get(id)?.filter((next) => within.has(next)));
  for (const one of reached) {
    for (const next of graph.get(one) ?? []) if (within.has(next)) reached.add(next);
  }
  return reached;
};

/** What is left when those that need nothing more are taken away, again and again: most of a sound rulebook. */
const inLoopsOrBetween = (graph: Graph): ReadonlySet<string> => {
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

const cycleIn = (graph: Graph, suspects: ReadonlySet<string>): readonly string[] | undefined => {
  for (const start of graph.keys()) {
    const path = suspects.has(start) ? pathBack(graph, start, suspects) : undefined;
    if (path !== undefined) return path;
  }
  return undefined;
};

/** The shortest way from an operation back to itself. */
const pathBack = (
  graph: Graph,
  start: string,
  suspects: ReadonlySet<string>,
): readonly string[] | undefined => {
  const cameFrom = new Map<string, string>();
  const queue = [start];
  for (const id of queue) {
    for (const next of graph.get(id) ?? []) {
      if (next === start) return wayTo(id, cameFrom);
      if (cameFrom.has(next) || !suspects.has(next)) continue;
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
