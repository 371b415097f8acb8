import type { PlannedStation } from './plan';

/** What the order of stations is worked out from: where an operation is done and what it needs from elsewhere. */
type Placed = { readonly station: string; readonly needs: readonly string[] };

/** Half a step: a shop stands just before the station it feeds. */
const BEFORE = 0.5;

/**
 * Where each station stands along the line, shops and yards included. A shop stands just before the first
 * line station with an operation that needs one of the shop's; one that feeds nothing stands at the head.
 * Yards come after the line, sites after the yards.
 */
export const lineOrder = (
  stations: readonly PlannedStation[],
  operations: { readonly [id: string]: Placed },
): ReadonlyMap<string, number> => {
  const onLine = new Map(
    stations.flatMap(({ id, pos }): [string, number][] => (pos === null ? [] : [[id, pos]])),
  );
  const end = Math.max(0, ...onLine.values());
  const fed = firstFed(onLine, operations);
  return new Map(stations.map(({ id, kind, pos }) => [id, pos ?? offLine(kind, fed.get(id) ?? 0, end)]));
};

const offLine = (kind: PlannedStation['kind'], fed: number, end: number): number => {
  if (kind === 'site') return end + 2 * BEFORE;
  return kind === 'yard' ? end + BEFORE : fed - BEFORE;
};

/** For every station off the line, the first place on the line that needs its work. */
const firstFed = (
  onLine: ReadonlyMap<string, number>,
  operations: { readonly [id: string]: Placed },
): ReadonlyMap<string, number> => {
  const fed = new Map<string, number>();
  for (const { station, needs } of Object.values(operations)) {
    const pos = onLine.get(station);
    if (pos === undefined) continue;
    for (const need of needs) {
      const shop = operations[need]?.station;
      if (shop !== undefined) fed.set(shop, Math.min(fed.get(shop) ?? pos, pos));
    }
  }
  return fed;
};
