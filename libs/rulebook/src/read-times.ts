import type { Span } from '@libs/judge';
import { compare, inBase, isDecimal, measureUnit } from '@libs/kernel';
import type { TimeRow } from './body';
import type { Complain, ComplainHere } from './complain';
import { here } from './complain';
import type { Known } from './known';
import { checkKnown } from './known';
import { conditionsOf } from './read-covers';
import { readWhen } from './read-when';
import type { TimeCells } from './shapes';
import { TimeShape } from './shapes';
import { sourceOfRow } from './source';
import type { ShapedRow, Table } from './table-file';
import { shapedRows } from './table-file';

/** How long after another operation one may come: `textured,taped,12,-,h`. */
export const readTimes = (table: Table, known: Known, complain: Complain): readonly TimeRow[] =>
  shapedRows(table, { shape: TimeShape, conditions: true }, new Set(known.domains.keys()), complain).map(
    (row) => timeOf(table.file, row, known, here(complain, table.file, row.row)),
  );

const timeOf = (
  file: string,
  { row, is, cells }: ShapedRow<TimeCells>,
  known: Known,
  complain: ComplainHere,
): TimeRow => {
  checkKnown([is.operation], ['operation', known.operations], 'operation', complain);
  checkKnown([is.since], ['operation', known.operations], 'since', complain);
  if (is.operation === is.since) complain('since', `\`${is.since}\` cannot come after itself`);
  checkSpans(is, complain);
  return {
    row,
    operation: is.operation,
    when: readWhen(conditionsOf(cells, known), known.domains, complain),
    rule: {
      since: is.since,
      atLeast: spanOf(is.at_least, is.unit),
      atMost: spanOf(is.at_most, is.unit),
      grade: is.grade,
      source: sourceOfRow(file, row, is),
    },
  };
};

const spanOf = (value: string, unit: string): Span | null => (value === '' ? null : { value, unit });

const checkSpans = (is: TimeCells, complain: ComplainHere): void => {
  const { at_least, at_most, unit } = is;
  if (measureUnit(unit)?.kind !== 'time') complain('unit', `\`${unit}\` is no unit of time`);
  if (at_least === '' && at_most === '')
    complain('at_least', 'is empty, and so is at_most: the row says nothing');
  const columns = ['at_least', 'at_most'] as const;
  const wrong = columns.filter((column) => !isSpan(is[column]));
  wrong.forEach((column) => complain(column, `\`${is[column]}\` is no length of time`));
  if (wrong.length === 0 && isLess(at_most, at_least, unit))
    complain('at_most', `is less than at_least, ${at_least}`);
};

const isSpan = (value: string): boolean => value === '' || (isDecimal(value) && !value.startsWith('-'));

const isLess = (one: string, other: string, unit: string): boolean => {
  const [a, b] = [inBase(one, unit), inBase(other, unit)];
  return a !== undefined && b !== undefined && compare(a, b) < 0;
};
