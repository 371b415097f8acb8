import type { Envelope } from '@libs/kernel';
import type { Sql } from '@libs/ledger';
import { applyAll, bearingsOf, wantedBy } from '../at-hand';
import type { AtHand } from '../at-hand';
import { changesOf } from '../change';
import type { Touched } from '../change';
import { unitEventsOf } from '../unit-event';
import type { AnyView } from '../view';
import { isBeingBuilt, positionDetails } from './positions';
import { gather, write } from './store';

type Positions = ReadonlyMap<string, number>;

export type Standing = {
  readonly views: readonly AnyView[];
  readonly positions: Positions;
  readonly atHand: AtHand;
};

/**
 * Takes the views on by events that follow on each other, and says where they are then: one load for all details that
 * are not at hand, and one statement a table that changes, however many events there are. Views may stand at different
 * positions, each takes what comes after its own.
 */
export const advance = async (
  events: readonly Envelope[],
  { views, positions, atHand }: Standing,
  sql: Sql,
): Promise<Positions> => {
  const next = new Map(positions);
  for (const [position, group] of byPosition(views, positions)) {
    const later = events.filter((event) => event.position > position);
    const [first] = later;
    if (first === undefined) continue;
    if (first.position !== position + 1) throw new Error(`Views at ${position} miss ${first.position - 1}`);

    await take(later, group, atHand, sql);
    for (const { name } of group) next.set(name, position + later.length);
  }
  return next;
};

/** A view being built is its builder's to write. */
const byPosition = (
  views: readonly AnyView[],
  positions: Positions,
): ReadonlyMap<number, readonly AnyView[]> => {
  const groups = new Map<number, AnyView[]>();
  for (const view of views) {
    const position = positions.get(view.name);
    if (position === undefined || isBeingBuilt(position)) continue;
    groups.set(position, [...(groups.get(position) ?? []), view]);
  }
  return groups;
};

const take = async (
  events: readonly Envelope[],
  views: readonly AnyView[],
  atHand: AtHand,
  sql: Sql,
): Promise<void> => {
  const touched = new Map<string, Touched>();
  const bearings = bearingsOf(unitEventsOf(events), views);
  const details = await gather(wantedBy(bearings, touched), atHand, sql);
  applyAll(bearings, touched, (name) => details.get(name));

  const changes = changesOf(touched.values());
  changes.details.push(...positionDetails(views, events.at(-1)?.position ?? 0));
  await write(changes, views, sql);
  for (const [name, { after }] of touched) atHand.set(name, after);
};
