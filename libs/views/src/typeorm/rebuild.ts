import type { Ledger, Sql } from '@libs/ledger';
import type { RecordedUnitEvent } from '@libs/record';
import { applyAll, bearingsOf, detailsAtHand, handle, wantedBy } from '../at-hand';
import type { AtHand } from '../at-hand';
import { changesOf } from '../change';
import type { Touched } from '../change';
import { unitEventsIn } from '../unit-event';
import type { AnyView } from '../view';
import { beginAnew, isBeingBuilt, markBeingBuilt, openPositions, setPositions } from './positions';
import { gather, write } from './store';

/** Events read at a time: enough that a page's cost is its events, small enough to stay out of anyone's way. */
const PAGE = 2_000;
/**
 * Details changed in memory before they are written, and as many kept at hand after: what bounds the memory of a
 * rebuild, however long the log is. A section is long done when hundreds more were begun, so nearly each is
 * written once.
 */
const FLUSH = 1_000;

/** What building needs of an open ledger. `transaction` keeps the writer out while it runs. */
export type BuiltFrom = Pick<Ledger, 'after' | 'head'> & {
  readonly reader: Sql;
  readonly transaction: <T>(work: (sql: Sql) => Promise<T>) => Promise<T>;
};
export type Progress = (position: number, head: number) => void;

/** Every view from the ledger anew, whatever is stored. Comes to the same bytes as upkeep does. */
export const rebuild = async (
  ledger: BuiltFrom,
  views: readonly AnyView[],
  progress: Progress,
): Promise<void> => {
  await ledger.transaction(async (sql) => {
    await openPositions(views, sql);
    for (const view of views) await beginAnew(view, sql);
    await markBeingBuilt(views, sql);
  });
  await build(ledger, { views, from: 0, progress });
};

/**
 * Brings views that are behind up to the ledger's head: new ones, those of a new version, those whose building was
 * cut short. To be called once a ledger is open, before anyone reads them.
 */
export const catchUp = async (
  ledger: BuiltFrom,
  views: readonly AnyView[],
  progress: Progress,
): Promise<void> => {
  const behind = await ledger.transaction(async (sql) => {
    const found = await viewsBehind(await ledger.head(), views, sql);
    for (const some of found.values()) await markBeingBuilt(some, sql);
    return found;
  });
  for (const [from, some] of behind) await build(ledger, { views: some, from, progress });
};

/** By the position they are at. Half-built ones begin at 0. */
const viewsBehind = async (
  head: number,
  views: readonly AnyView[],
  sql: Sql,
): Promise<ReadonlyMap<number, readonly AnyView[]>> => {
  const positions = await openPositions(views, sql);
  const behind = new Map<number, AnyView[]>();
  for (const view of views) {
    const stored = positions.get(view.name);
    const position = stored === undefined || isBeingBuilt(stored) ? await beginAnew(view, sql) : stored;
    if (position < head) behind.set(position, [...(behind.get(position) ?? []), view]);
  }
  return behind;
};

type Building = { readonly views: readonly AnyView[]; readonly from: number; readonly progress: Progress };

const build = async (ledger: BuiltFrom, { views, from, progress }: Building): Promise<void> => {
  const desk: Desk = { views, atHand: detailsAtHand(FLUSH), touched: new Map() };
  const head = await ledger.head();
  let position = from;

  /** The next page is read while this one is worked on. */
  const takeAll = async (sql: Sql, afterPage: () => Promise<void>): Promise<void> => {
    let page = await ledger.after(position, PAGE);
    while (page.length > 0) {
      position += page.length;
      const [next] = await Promise.all([ledger.after(position, PAGE), take(unitEventsIn(page), desk, sql)]);
      await afterPage();
      progress(position, Math.max(position, head));
      page = next;
    }
  };

  await takeAll(ledger.reader, async () => {
    if (desk.touched.size >= FLUSH) await ledger.transaction((sql) => flush(desk, sql));
  });
  // What was recorded meanwhile is taken in with the writer kept out, so that upkeep goes on from here without a gap.
  await ledger.transaction(async (sql) => {
    await takeAll(sql, () => Promise.resolve());
    await flush(desk, sql);
    await setPositions(views, position, sql);
  });
};

type Desk = {
  readonly views: readonly AnyView[];
  readonly atHand: AtHand;
  readonly touched: Map<string, Touched>;
};

const take = async (
  page: readonly RecordedUnitEvent[],
  { views, atHand, touched }: Desk,
  sql: Sql,
): Promise<void> => {
  const bearings = bearingsOf(page, views);
  const details = await gather(wantedBy(bearings, touched), atHand, sql);
  applyAll(bearings, touched, (name) => details.get(name));
};

const flush = async ({ views, atHand, touched }: Desk, sql: Sql): Promise<void> => {
  await write(changesOf(touched.values()), views, sql);
  for (const { view, key, after } of touched.values()) atHand.set(handle(view, key), after);
  touched.clear();
};
