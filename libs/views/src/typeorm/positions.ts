import type { Sql } from '@libs/ledger';
import type { Detail } from '../change';
import type { AnyView } from '../view';
import { putDetails } from './store';
import { createDetails, createFor } from './tables';

/** Being built: not current to any position, and begun anew if the building is cut short. */
const BEING_BUILT = -1;

/**
 * Where a view stands is a detail of its own, under no key: it is then written by the very statement that writes the
 * details, and a statement more in every commit is what a view costs most.
 */
const NO_KEY = '';

type Standing = { readonly version: number; readonly position: number };

/**
 * Up to where each view is current, by name. Creates what is not there; tables of another version, or half built, are
 * thrown away and begin at 0.
 */
export const openPositions = async (
  views: readonly AnyView[],
  sql: Sql,
): Promise<ReadonlyMap<string, number>> => {
  await sql.query(createDetails(sql.dialect));
  const stored = await storedStandings(sql);
  const positions = new Map<string, number>();
  for (const view of views) {
    const standing = stored.get(view.name);
    if (standing?.version === view.version) positions.set(view.name, standing.position);
    else positions.set(view.name, await beginAnew(view, sql));
  }
  return positions;
};

export const isBeingBuilt = (position: number | undefined): boolean => position === BEING_BUILT;

export const beginAnew = async (view: AnyView, sql: Sql): Promise<number> => {
  for (const statement of createFor(view, sql.dialect)) await sql.query(statement);
  await setPositions([view], 0, sql);
  return 0;
};

export const markBeingBuilt = (views: readonly AnyView[], sql: Sql): Promise<void> =>
  setPositions(views, BEING_BUILT, sql);

export const setPositions = (views: readonly AnyView[], position: number, sql: Sql): Promise<void> =>
  putDetails(positionDetails(views, position), sql);

export const positionDetails = (views: readonly AnyView[], position: number): readonly Detail[] =>
  views.map(({ name, version }) => ({
    view: name,
    key: NO_KEY,
    detail: JSON.stringify({ version, position } satisfies Standing),
  }));

const storedStandings = async (sql: Sql): Promise<ReadonlyMap<string, Standing>> => {
  const rows = await sql.query<{ view: string; detail: string }>(
    'SELECT view, detail FROM view_detail WHERE key = $1',
    [NO_KEY],
  );
  return new Map(rows.map(({ view, detail }) => [view, JSON.parse(detail) as Standing]));
};
