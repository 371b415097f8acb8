import type { Sql } from '@libs/ledger';
import type { AnyView } from '../view';
import { createFor, createShared } from './tables';

/** Being built: not current to any position, and begun anew if the building is cut short. */
const BEING_BUILT = -1;

type PositionRow = { readonly view: string; readonly version: number; readonly position: number };

/**
 * Up to where each view is current, by name. Creates what is not there; tables of another version, or half built, are
 * thrown away and begin at 0.
 */
export const openPositions = async (
  views: readonly AnyView[],
  sql: Sql,
): Promise<ReadonlyMap<string, number>> => {
  for (const statement of createShared(sql.dialect)) await sql.query(statement);
  const stored = new Map((await storedPositions(sql)).map((row) => [row.view, row]));
  const positions = new Map<string, number>();
  for (const view of views) {
    const row = stored.get(view.name);
    if (row?.version === view.version) positions.set(view.name, row.position);
    else positions.set(view.name, await beginAnew(view, sql));
  }
  return positions;
};

export const isBeingBuilt = (position: number | undefined): boolean => position === BEING_BUILT;

export const beginAnew = async (view: AnyView, sql: Sql): Promise<number> => {
  for (const statement of createFor(view, sql.dialect)) await sql.query(statement);
  await setPosition(view, 0, sql);
  return 0;
};

export const markBeingBuilt = (view: AnyView, sql: Sql): Promise<void> => setPosition(view, BEING_BUILT, sql);

export const setPosition = async (view: AnyView, position: number, sql: Sql): Promise<void> => {
  await sql.query(
    `INSERT INTO view_position (view, version, position) VALUES ($1, $2, $3)
     ON CONFLICT (view) DO UPDATE SET version = excluded.version, position = excluded.position`,
    [view.name, view.version, position],
  );
};

const storedPositions = (sql: Sql): Promise<readonly PositionRow[]> =>
  sql.query<PositionRow>('SELECT view, version, position FROM view_position');
