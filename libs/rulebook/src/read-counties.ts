import type { County } from './body';
import type { Complain, ComplainHere } from './complain';
import { here } from './complain';
import type { Known } from './known';
import { checkUnique } from './known';
import { conditionsOf } from './read-covers';
import { CountyShape } from './shapes';
import type { Table } from './table-file';
import { shapedRows } from './table-file';

/** What each county asks of a design: a column for each attribute it has a zone of. */
export const readCounties = (table: Table, known: Known, complain: Complain): ReadonlyMap<string, County> => {
  const attributes = new Set(known.domains.keys());
  const rows = shapedRows(table, { shape: CountyShape, conditions: true }, attributes, complain);
  const at = (row: number): ComplainHere => here(complain, table.file, row);
  checkUnique(
    rows,
    ({ is }) => is.county,
    ({ row }) => at(row),
    'county',
  );
  checkRising(table.header, known, at(1));
  return new Map(
    rows.map(({ row, is, cells }) => [
      is.county,
      { row, zones: zonesOf(conditionsOf(cells, known), known, at(row)) },
    ]),
  );
};

/** Without an order among its values, nobody could tell whether a design is good for a county. */
const checkRising = (header: readonly string[], { domains }: Known, complain: ComplainHere): void =>
  header
    .filter((column) => domains.get(column)?.rising === false)
    .forEach((column) => complain(column, 'is not marked `rising` in plant.yaml'));

const zonesOf = (
  cells: { readonly [attribute: string]: string },
  { domains }: Known,
  complain: ComplainHere,
): County['zones'] => {
  const given = Object.entries(cells).filter(([, value]) => value !== '');
  given
    .filter(([attribute, value]) => domains.get(attribute)?.values.includes(value) === false)
    .forEach(([attribute, value]) => complain(attribute, `"${value}" is no value of \`${attribute}\``));
  return Object.fromEntries(given);
};
