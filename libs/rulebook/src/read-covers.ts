import type { CoverRow } from './body';
import type { Complain, ComplainHere } from './complain';
import { here } from './complain';
import type { Known } from './known';
import { checkKnown, idsIn } from './known';
import { readWhen } from './read-when';
import type { CoverCells } from './shapes';
import { CoverShape } from './shapes';
import { sourceOfRow } from './source';
import type { ShapedRow, Table } from './table-file';
import { shapedRows } from './table-file';

export const readCovers = (table: Table, known: Known, complain: Complain): readonly CoverRow[] => {
  const attributes = new Set(known.domains.keys());
  return shapedRows(table, { shape: CoverShape, conditions: true }, attributes, complain).map((row) =>
    coverOf(table.file, row, known, here(complain, table.file, row.row)),
  );
};

const coverOf = (
  file: string,
  { row, is, cells }: ShapedRow<CoverCells>,
  known: Known,
  complain: ComplainHere,
): CoverRow => {
  const otherFace = idsIn(is.other_face);
  checkKnown([is.cover], ['operation', known.operations], 'cover', complain);
  checkKnown([is.hides], ['operation', known.operations], 'hides', complain);
  checkKnown(otherFace, ['operation', known.operations], 'other_face', complain);
  if (is.cover === is.hides) complain('hides', `\`${is.cover}\` cannot hide itself`);
  if (otherFace.includes(is.cover) || otherFace.includes(is.hides)) {
    complain('other_face', 'is a third operation: neither the cover nor what it hides');
  }
  if (is.hidden !== 'second' && otherFace.length > 0)
    complain('other_face', 'belongs to rows hidden `second` only');
  return {
    row,
    cover: is.cover,
    when: readWhen(conditionsOf(cells, known), known.domains, complain),
    hide: {
      operation: is.hides,
      hidden: is.hidden,
      otherFace,
      grade: is.grade,
      source: sourceOfRow(file, row, is),
    },
  };
};

/** The cells of columns named by a design attribute. */
export const conditionsOf = (
  cells: { readonly [column: string]: string },
  { domains }: Known,
): { readonly [attribute: string]: string } =>
  Object.fromEntries(Object.entries(cells).filter(([column]) => domains.has(column)));
