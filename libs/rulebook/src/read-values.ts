import type { Alternatives, PlannedValue, Test, ValueKind } from '@libs/judge';
import { measureUnit } from '@libs/kernel';
import type { ValueRow } from './body';
import type { Complain, ComplainHere } from './complain';
import { here } from './complain';
import { compileCell } from './feel';
import type { Known } from './known';
import { checkKnown, idsIn } from './known';
import { conditionsOf } from './read-covers';
import { readAlternatives } from './read-relation';
import { readWhen } from './read-when';
import type { ValueCells } from './shapes';
import { ValueShape } from './shapes';
import { sourceOfRow } from './source';
import type { ShapedRow, Table } from './table-file';
import { shapedRows } from './table-file';

/** The rows that are on; those that are off are checked all the same, so that switching one on is safe. */
export const readValues = (table: Table, known: Known, complain: Complain): readonly ValueRow[] => {
  const attributes = new Set(known.domains.keys());
  const rows = shapedRows(table, { shape: ValueShape, conditions: true }, attributes, complain);
  const named = namesByOperation(rows);
  return rows.flatMap((row) => {
    const complainHere = here(complain, table.file, row.row);
    const read = valueOf(table.file, row, known, complainHere);
    checkParts(read, named, complainHere);
    return row.is.on === 'yes' ? [read] : [];
  });
};

const valueOf = (
  file: string,
  { row, is, cells }: ShapedRow<ValueCells>,
  known: Known,
  complain: ComplainHere,
): ValueRow => {
  checkRow(is, known, complain);
  return {
    row,
    operation: is.operation,
    when: readWhen(conditionsOf(cells, known), known.domains, complain),
    asDesign: is.as_design === '' ? null : is.as_design,
    planned: plannedOf(is, complain, sourceOfRow(file, row, is)),
  };
};

const plannedOf = (is: ValueCells, complain: ComplainHere, source: PlannedValue['source']): PlannedValue => ({
  characteristic: is.characteristic,
  label: { en: is.en, es: is.es },
  kind: is.kind,
  unit: unitOf(is),
  test: requiredTest(is, complain),
  required: is.kind === 'derived' ? is.relation : is.required,
  ...relationOf(is, complain),
  ...choicesOf(is),
  grade: is.grade,
  source,
  from: is.from,
  ...(is.lot_kind === '' ? {} : { lotKind: is.lot_kind }),
  asked: is.asked,
  worstOf: Number(is.worst_of),
  ...placesOf(is),
});

const placesOf = ({ places = '' }: ValueCells): Pick<PlannedValue, 'places'> =>
  places === '' ? {} : { places: idsIn(places) };

const unitOf = ({ kind, unit }: ValueCells): string | null => {
  if (kind === 'count') return unit === '' ? '1' : unit;
  return unit === '' ? null : unit;
};

const requiredTest = (is: ValueCells, complain: ComplainHere): Test => {
  const compiled = compileCell(is.required);
  if (!compiled.ok) {
    complain('required', compiled.says);
    return { is: 'any' };
  }
  const wrong = wrongFor(is.kind, compiled.test);
  if (wrong !== undefined) complain('required', wrong);
  return compiled.test;
};

const NUMBERS: ReadonlySet<ValueKind> = new Set(['measure', 'count']);

/** Why a test could never be met, or never be missed, by values of a kind. */
export const wrongFor = (kind: ValueKind, test: Test): string | undefined => {
  switch (test.is) {
    case 'any':
      return undefined;
    case 'anyOf':
      return test.tests.map((one) => wrongFor(kind, one)).find((wrong) => wrong !== undefined);
    case 'not':
      return wrongFor(kind, test.test);
    case 'day':
    case 'days':
      return kind === 'date' ? undefined : `a ${kind} is no day`;
    case 'boolean':
      return 'true and false are no values here: a yes/no is "yes" or "no"';
    case 'text':
      return wrongText(kind, test.text);
    default:
      return NUMBERS.has(kind) ? undefined : `a ${kind} is not compared as a number`;
  }
};

const wrongText = (kind: ValueKind, text: string): string | undefined => {
  if (NUMBERS.has(kind)) return `"${text}" is text, and a ${kind} is a number`;
  if (kind !== 'yes-no' || text === 'yes' || text === 'no') return undefined;
  return `"${text}" is no answer to a yes/no: "yes" or "no"`;
};

type Related = Pick<PlannedValue, 'relation' | 'alternatives'>;

const relationOf = (is: ValueCells, complain: ComplainHere): Related => {
  if (is.kind !== 'derived') {
    if (is.relation !== '') complain('relation', 'belongs to rows of kind derived only');
    return {};
  }
  const alternatives = readAlternatives(is.relation);
  if (alternatives === undefined) {
    complain('relation', `\`${is.relation}\` is no linear relation such as \`3 * hole <= depth\``);
    return {};
  }
  const [relation, ...more] = alternatives.flat();
  return relation !== undefined && more.length === 0 ? { relation } : { alternatives };
};

const relationsIn = ({ relation, alternatives }: PlannedValue): Alternatives =>
  alternatives ?? (relation === undefined ? [] : [[relation]]);

const choicesOf = ({ choices }: ValueCells): { readonly choices?: readonly string[] } =>
  choices === '' ? {} : { choices: choices.split('|').map((choice) => choice.trim()) };

const checkRow = (is: ValueCells, known: Known, complain: ComplainHere): void => {
  checkKnown([is.operation], ['operation', known.operations], 'operation', complain);
  checkKnown(is.lot_kind === '' ? [] : [is.lot_kind], ['kind of lot', known.lotKinds], 'lot_kind', complain);
  if ((is.from === 'lot') !== (is.lot_kind !== ''))
    complain('lot_kind', 'goes with `from` lot, and only with it');
  if (is.choices !== '' && is.kind !== 'choice') complain('choices', 'belong to rows of kind choice only');
  if (is.kind === 'derived' && is.required !== '')
    complain('required', 'a derived row requires its relation');
  checkPlaces(is, known, complain);
  checkUnit(is, complain);
  checkDesign(is, known, complain);
};

const checkPlaces = ({ places = '', kind, from }: ValueCells, known: Known, complain: ComplainHere): void => {
  checkKnown(idsIn(places), ['place', known.places], 'places', complain);
  if (places !== '' && (from !== 'entry' || kind === 'derived')) {
    complain('places', 'are read by whoever signs: neither filled in nor derived');
  }
};

const checkUnit = ({ kind, unit }: ValueCells, complain: ComplainHere): void => {
  if (unit === '') {
    if (kind === 'measure') complain('unit', 'a measure needs its unit');
    return;
  }
  if (measureUnit(unit) === undefined) complain('unit', `\`${unit}\` is no unit of a plant`);
  if (!NUMBERS.has(kind) && kind !== 'derived') complain('unit', `a ${kind} has none`);
};

const checkDesign = (is: ValueCells, known: Known, complain: ComplainHere): void => {
  if (is.as_design === '') return;
  const design = new Set([...known.details, ...known.domains.keys()]);
  checkKnown([is.as_design], ['detail or attribute of the design', design], 'as_design', complain);
  if (is.required !== '') complain('required', 'is given by the design already: leave it at -');
  if (is.kind === 'derived') complain('as_design', 'a derived row requires its relation');
};

type Names = ReadonlyMap<string, ReadonlySet<string>>;

/** What each operation's rows that are on call their characteristics, derived ones left out. */
const namesByOperation = (rows: readonly ShapedRow<ValueCells>[]): Names => {
  const names = new Map<string, Set<string>>();
  for (const { is } of rows) {
    if (is.kind === 'derived' || is.on === 'no') continue;
    const set = names.get(is.operation);
    if (set === undefined) names.set(is.operation, new Set([is.characteristic]));
    else set.add(is.characteristic);
  }
  return names;
};

const checkParts = ({ operation, planned }: ValueRow, names: Names, complain: ComplainHere): void => {
  const relations = relationsIn(planned).flat();
  if (relations.length === 0) return;
  const parts = relations.flatMap(({ left, right }) =>
    [...left, ...right].flatMap(({ characteristic }) => characteristic ?? []),
  );
  if (parts.length === 0) complain('relation', 'names no characteristic');
  parts
    .filter((part) => !(names.get(operation)?.has(part) ?? false))
    .forEach((part) => complain('relation', `\`${part}\` is no characteristic of \`${operation}\``));
};
