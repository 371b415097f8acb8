import type { Complain } from './complain';
import { here } from './complain';
import type { Known } from './known';
import { checkKnown, checkUnique, idsIn } from './known';
import type { Fault, Named, Rulebook, RulebookFiles } from './rulebook';
import { FaultShape, InstrumentKindShape, LotKindShape, NamedShape } from './shapes';
import type { ShapedRow, TableShape } from './table-file';
import { readTable, shapedRows } from './table-file';

export type Catalogues = Pick<Rulebook, 'lotKinds' | 'instrumentKinds' | 'components' | 'symptoms'>;

type Titled = { readonly en: string; readonly es: string };
const nameOf = ({ en, es }: Titled): Named['name'] => ({ en, es });

/** The plain lists: what kinds of lot and instrument there are, what can be defective and how it shows. */
export const readCatalogues = (files: RulebookFiles, complain: Complain): Catalogues => {
  const rowsOf = <T>(
    file: string,
    shape: TableShape<T>['shape'],
    id: (row: T) => string,
  ): readonly ShapedRow<T>[] => {
    const rows = shapedRows(
      readTable(file, files[file], complain),
      { shape, conditions: false },
      new Set(),
      complain,
    );
    checkUnique(
      rows,
      ({ is }) => id(is),
      ({ row }) => here(complain, file, row),
      Object.keys(shape.shape)[0] ?? '',
    );
    return rows;
  };
  const named = (file: string): readonly Named[] =>
    rowsOf(file, NamedShape, ({ id }) => id).map(({ is }) => ({ id: is.id, name: nameOf(is) }));
  const lots = rowsOf('lots.csv', LotKindShape, ({ kind }) => kind);
  checkSubstitutes(lots, complain);
  return {
    lotKinds: lots.map(({ is: row }) => ({
      id: row.kind,
      name: nameOf(row),
      traced: row.traced === 'yes',
      insteadOf: idsIn(row.instead_of ?? ''),
    })),
    instrumentKinds: rowsOf('instruments.csv', InstrumentKindShape, ({ kind }) => kind).map(
      ({ is: row }) => ({
        id: row.kind,
        name: nameOf(row),
        calibrated: row.calibrated === 'yes',
      }),
    ),
    components: named('components.csv'),
    symptoms: named('symptoms.csv'),
  };
};

/** Read from the substitute's side, which names what it may replace; used from the other. */
export const substitutesIn = ({ lotKinds }: Catalogues): ReadonlyMap<string, readonly string[]> => {
  const substitutes = new Map<string, readonly string[]>();
  for (const { id, insteadOf } of lotKinds) {
    for (const kind of insteadOf) substitutes.set(kind, [...(substitutes.get(kind) ?? []), id]);
  }
  return substitutes;
};

type LotCells = { readonly kind: string; readonly instead_of?: string | undefined };

const checkSubstitutes = (rows: readonly ShapedRow<LotCells>[], complain: Complain): void => {
  const known = new Set(rows.map(({ is }) => is.kind));
  for (const { row, is } of rows) {
    const complainHere = here(complain, 'lots.csv', row);
    const insteadOf = idsIn(is.instead_of ?? '');
    checkKnown(insteadOf, ['kind of lot', known], 'instead_of', complainHere);
    if (insteadOf.includes(is.kind))
      complainHere('instead_of', `\`${is.kind}\` needs no approval in its own place`);
  }
};

const FAULTS = 'faults.csv';
type FaultCells = {
  readonly component: string;
  readonly symptom: string;
  readonly causes: string;
  readonly elsewhere: string;
  readonly caught_by: string;
};

export const readFaults = (files: RulebookFiles, known: Known, complain: Complain): readonly Fault[] => {
  const table = readTable(FAULTS, files[FAULTS], complain);
  const rows = shapedRows(table, { shape: FaultShape, conditions: false }, new Set(), complain);
  checkUnique(
    rows,
    ({ is }) => `${is.component} ${is.symptom}`,
    ({ row }) => here(complain, FAULTS, row),
    'symptom',
  );
  return rows.map((row) => faultOf(row, known, complain));
};

const faultOf = ({ row, is }: ShapedRow<FaultCells>, known: Known, complain: Complain): Fault => {
  const complainHere = here(complain, FAULTS, row);
  const causes = weighted(is.causes, (says) => complainHere('causes', says));
  const elsewhere = weighted(is.elsewhere, (says) => complainHere('elsewhere', says));
  checkKnown([is.component], ['component', known.components], 'component', complainHere);
  checkKnown([is.symptom], ['symptom', known.symptoms], 'symptom', complainHere);
  checkKnown(
    causes.map(({ id }) => id),
    ['operation', known.operations],
    'causes',
    complainHere,
  );
  checkKnown(idsIn(is.caught_by), ['operation', known.operations], 'caught_by', complainHere);
  return {
    component: is.component,
    symptom: is.symptom,
    causes: causes.map(({ id, weight }) => ({ operation: id, weight })),
    elsewhere: elsewhere.map(({ id, weight }) => ({ cause: id, weight })),
    caughtBy: idsIn(is.caught_by),
  };
};

type Weighted = { readonly id: string; readonly weight: 'a' | 'b' | 'c' };
const WEIGHTS = ['a', 'b', 'c'] as const;

/** `wired:b drywalled:c`, likeliest first; equals keep their order. */
const weighted = (cell: string, complain: (says: string) => void): readonly Weighted[] =>
  idsIn(cell)
    .flatMap((item) => {
      const [id = '', letter] = item.split(':');
      const weight = WEIGHTS.find((one) => one === letter);
      if (weight !== undefined && id !== '') return [{ id, weight }];
      complain(`\`${item}\` is not of the form id:a, id:b or id:c`);
      return [];
    })
    .sort((one, other) => one.weight.localeCompare(other.weight));
