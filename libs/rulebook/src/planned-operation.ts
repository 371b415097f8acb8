import type { Design, Edge, Hide, PlannedOperation, PlannedValue, TimeRule } from '@libs/judge';
import type { OperationRow, RulebookBody, ValueRow } from './body';
import type { Complain } from './complain';
import { mostSpecific } from './design-space';
import { compileCell } from './feel';
import type { Picked, Selection } from './pick';
import { requiredBy } from './pick';
import { wrongFor } from './read-values';

/** What an operation is planned on: the design, what else applies to it, and where stations stand in it. */
export type Ground = {
  readonly body: RulebookBody;
  readonly design: Design;
  readonly selection: Selection;
  readonly order: ReadonlyMap<string, number>;
};

/**
 * An operation as a design has it. Designs differ in few of their operations: one that came out the same before is
 * the very same object, so that it is put together, and its digest taken, once.
 */
export const plannedOperation = (picked: Picked, ground: Ground, complain: Complain): PlannedOperation => {
  const { selection } = ground;
  const parts: Parts = {
    requires: requiredBy(picked, selection, ground.order),
    expects: picked.fields.soft.filter((id) => selection.has(id)),
    hides: picked.hides.flatMap(({ row, hide }) => hideIn(selection, row, hide)),
    values: valuesFor(picked.row.id, ground, complain),
    times: timesFor(picked.row.id, ground),
  };
  const kept = keptOf(picked.row);
  const key = keyOf(picked.variant, parts);
  const known = kept.get(key);
  if (known !== undefined) return known;

  const operation = assembled(picked, parts, ground.body);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, operation);
  return operation;
};

type Parts = {
  readonly requires: ReturnType<typeof requiredBy>;
  readonly expects: readonly string[];
  readonly hides: readonly Keyed<{ readonly hide: Hide }>[];
  readonly values: readonly Keyed<{ readonly planned: PlannedValue }>[];
  readonly times: readonly Keyed<{ readonly rule: TimeRule }>[];
};

/** All that can differ from one design to another. Line breaks stand in no id and in no row. */
const keyOf = (variant: number, { requires, expects, hides, values, times }: Parts): string => {
  let key = `${variant}`;
  for (const { operation, named } of requires) key += `\n${operation}${named === operation ? '' : '*'}`;
  for (const id of expects) key += `\n~${id}`;
  for (const hide of hides) key += `\n-${hide.key}`;
  for (const value of values) key += `\n=${value.key}`;
  for (const time of times) key += `\n@${time.key}`;
  return key;
};

const assembled = (
  { row, fields: written }: Picked,
  parts: Parts,
  { substitutes }: RulebookBody,
): PlannedOperation => {
  const { hard: _, soft: __, sourceOf, ...fields } = written;
  const used = [...fields.lots, ...parts.values.flatMap(({ planned }) => planned.lotKind ?? [])];
  const approved = [...new Set(used)].flatMap((kind): [string, readonly string[]][] => {
    const kinds = substitutes.get(kind);
    return kinds === undefined ? [] : [[kind, kinds]];
  });
  return {
    ...fields,
    id: row.id,
    requires: parts.requires.map(({ operation, named }): Edge => ({ operation, source: sourceOf(named) })),
    expects: parts.expects,
    hides: parts.hides.map(({ hide }) => hide),
    values: parts.values.map(({ planned }) => planned),
    ...(approved.length === 0 ? {} : { substitutes: Object.fromEntries(approved) }),
    ...(parts.times.length === 0 ? {} : { times: parts.times.map(({ rule }) => rule) }),
  };
};

/** Variety enough for any plant; a bound, because a design may give its figures in free text. */
const MOST_KEPT = 200;

const KEPT = new WeakMap<OperationRow, Map<string, PlannedOperation>>();

const keptOf = (row: OperationRow): Map<string, PlannedOperation> => {
  const known = KEPT.get(row);
  if (known !== undefined) return known;

  const fresh = new Map<string, PlannedOperation>();
  KEPT.set(row, fresh);
  return fresh;
};

type Keyed<T> = T & { readonly key: string | number };

/** Faces that do not apply to the design close nothing; with none left the cover hides by itself. */
const hideIn = (selection: Selection, row: number, hide: Hide): readonly Keyed<{ readonly hide: Hide }>[] => {
  if (!selection.has(hide.operation)) return [];
  if (hide.otherFace.length === 0) return [{ key: row, hide }];

  const otherFace = hide.otherFace.filter((face) => selection.has(face));
  return [{ key: [row, ...otherFace].join(' '), hide: { ...hide, otherFace } }];
};

const valuesFor = (operation: string, { body, design }: Ground, complain: Complain): Parts['values'] => {
  const values: Keyed<{ readonly planned: PlannedValue }>[] = [];
  for (const table of body.values.get(operation) ?? []) {
    const row = mostSpecific(table, design);
    if (row === undefined) continue;
    if (row.asDesign === null) values.push({ key: row.row, planned: row.planned });
    else values.push(...asDesigned(row, row.asDesign, design, complain));
  }
  return values;
};

/** What does not apply to the design sets no clock going. */
const timesFor = (operation: string, { body, design, selection }: Ground): Parts['times'] =>
  (body.times.get(operation) ?? []).flatMap((table) => {
    const row = mostSpecific(table, design);
    return row === undefined || !selection.has(row.rule.since) ? [] : [{ key: row.row, rule: row.rule }];
  });

/**
 * The design gives the requirement. For a number it may be a number, which must then be met exactly, or a test
 * as the tables have it (`>= 8`); for anything else it is the very text.
 */
const asDesigned = (
  { row, planned }: ValueRow,
  detail: string,
  design: Design,
  complain: Complain,
): Parts['values'] => {
  const given = design[detail];
  const says = (text: string): Parts['values'] => {
    complain({ file: 'design', row: 1, column: detail, says: text });
    return [];
  };
  if (given === undefined || given.trim() === '')
    return says(`is not given, and row ${row} of values.csv requires it`);
  const key = `${row} ${JSON.stringify(given)}`;
  if (planned.kind !== 'measure' && planned.kind !== 'count') {
    const test = { is: 'text', text: given } as const;
    return [{ key, planned: { ...planned, test, required: JSON.stringify(given) } }];
  }
  const cell = compileCell(given);
  const wrong = cell.ok ? wrongFor(planned.kind, cell.test) : cell.says;
  if (!cell.ok || wrong !== undefined) return says(wrong ?? '');
  return [{ key, planned: { ...planned, test: cell.test, required: given } }];
};
