import type { Keeper, Sql } from '@libs/ledger';
import type { RecordedUnitEvent } from '@libs/record';
import { applyAll, detailsAtHand, wantedBy } from '../at-hand';
import type { AtHand } from '../at-hand';
import { changesOf } from '../change';
import type { Touched } from '../change';
import { unitEventsOf } from '../unit-event';
import type { AnyView } from '../view';
import { openPositions, positionDetails } from './positions';
import { gather, write } from './store';

/** Details kept in the writer's memory: the sections at work and their homes, in every view, and room to spare. */
const DETAILS_KEPT = 4_000;

/**
 * Keeps the views inside the writer's own transaction: one load for all details that are not at hand, and one statement
 * a table that changes, however many events the batch holds; one in all for most. A view that is behind (its version is new, or
 * it is being built) is left behind until `catchUp` has brought it to the head: half a history would be a lie.
 */
export const viewKeeper = (views: readonly AnyView[]): Keeper => {
  const atHand = detailsAtHand(DETAILS_KEPT);
  let positions: ReadonlyMap<string, number> | undefined;

  const currentAt = async (position: number, sql: Sql): Promise<readonly AnyView[]> => {
    positions ??= await openPositions(views, sql);
    return views.filter(({ name }) => positions?.get(name) === position);
  };

  return {
    name: 'views',
    keep: async (events, sql) => {
      const [first] = events;
      if (first === undefined) return;

      const before = first.position - 1;
      const after = before + events.length;
      const current = await currentAt(before, sql);
      if (current.length === 0) return;

      const touched = await touchedBy(unitEventsOf(events), current, atHand, sql);
      const changes = changesOf(touched.values());
      changes.details.push(...positionDetails(current, after));
      await write(changes, current, sql);
      for (const [name, { after: detail }] of touched) atHand.set(name, detail);
      positions = new Map([...(positions ?? []), ...current.map(({ name }) => [name, after] as const)]);
    },
    dropped: () => {
      atHand.clear();
      positions = undefined;
    },
  };
};

/** Every detail these events bear on, as it was and as it is now. */
const touchedBy = async (
  events: readonly RecordedUnitEvent[],
  views: readonly AnyView[],
  atHand: AtHand,
  sql: Sql,
): Promise<Map<string, Touched>> => {
  const details = await gather(wantedBy(events, views), atHand, sql);
  const touched = new Map<string, Touched>();
  applyAll(events, views, touched, (name) => details.get(name));
  return touched;
};
