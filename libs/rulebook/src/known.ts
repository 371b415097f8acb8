import type { Domain } from './body';
import type { ComplainHere } from './complain';

/** Everything a rulebook's rows may refer to, by id. */
export type Known = {
  readonly stations: ReadonlySet<string>;
  readonly places: ReadonlySet<string>;
  readonly crews: ReadonlySet<string>;
  readonly operations: ReadonlySet<string>;
  readonly lotKinds: ReadonlySet<string>;
  readonly instrumentKinds: ReadonlySet<string>;
  readonly components: ReadonlySet<string>;
  readonly symptoms: ReadonlySet<string>;
  readonly details: ReadonlySet<string>;
  readonly domains: ReadonlyMap<string, Domain>;
};

/** Complains of every id that is not known as such: `wired-up` is no operation. */
export const checkKnown = (
  ids: readonly string[],
  [what, known]: readonly [string, ReadonlySet<string>],
  column: string,
  complain: ComplainHere,
): void =>
  ids
    .filter((id) => !known.has(id))
    .forEach((id) => {
      complain(column, `\`${id}\` is no ${what} of this rulebook`);
    });

/** Complains of every later row with an id that came before. */
export const checkUnique = <T>(
  rows: readonly T[],
  idOf: (row: T) => string,
  complainOf: (row: T) => ComplainHere,
  column: string,
): void => {
  const seen = new Set<string>();
  for (const row of rows) {
    const id = idOf(row);
    if (seen.has(id)) complainOf(row)(column, `\`${id}\` stands here twice`);
    seen.add(id);
  }
};

/** Cells that hold several ids, separated by spaces. */
export const idsIn = (cell: string): readonly string[] => cell.split(/\s+/).filter((id) => id !== '');
