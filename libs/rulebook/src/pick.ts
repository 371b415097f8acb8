import type { Design, PlannedStation } from '@libs/judge';
import { lineOrder } from '@libs/judge';
import type { CoverRow, OperationFields, OperationRow, RulebookBody } from './body';
import { ALL_DUE } from './body';
import { matches, mostSpecific } from './design-space';

/** An operation that applies to a design, as its variant has it, with the covers that apply. */
export type Picked = {
  readonly row: OperationRow;
  readonly fields: OperationFields;
  /** Which of its variants: its place in the list, -1 for none. */
  readonly variant: number;
  readonly hides: readonly Hiding[];
};
export type Hiding = CoverRow;

/** The operations of a design, by id, in file order. */
export type Selection = ReadonlyMap<string, Picked>;

export const select = (
  rows: readonly OperationRow[],
  covers: RulebookBody['covers'],
  design: Design,
): Selection => {
  const applicable = rows.filter(({ when }) => matches(when, design));
  return new Map(
    applicable.map((row) => [
      row.id,
      {
        row,
        ...fieldsFor(row, design),
        hides: (covers.get(row.id) ?? []).flatMap((table) => mostSpecific(table, design) ?? []),
      },
    ]),
  );
};

/** As the variant for this design has it: a gasket shipped loose is the home's, not a section's. */
const fieldsFor = (
  { fields, variants }: OperationRow,
  design: Design,
): Pick<Picked, 'fields' | 'variant'> => {
  const variant = variants.findIndex(({ when }) => matches(when, design));
  return { variant, fields: variant < 0 ? fields : { ...fields, ...variants[variant]?.fields } };
};

/** Where each station stands, shops by what they feed in this design. */
export const orderOfStations = (
  stations: readonly PlannedStation[],
  selection: Selection,
): ReadonlyMap<string, number> =>
  lineOrder(
    stations,
    Object.fromEntries(
      [...selection].map(([id, { fields, hides }]) => [
        id,
        {
          station: fields.station,
          needs: [...fields.hard, ...fields.soft, ...hides.map(({ hide }) => hide.operation)],
        },
      ]),
    ),
  );

/** What an operation requires, `all-due` spelt out; ids that do not apply to the design count as met. */
export const requiredBy = (
  { row, fields }: Picked,
  selection: Selection,
  order: ReadonlyMap<string, number>,
): readonly { readonly operation: string; readonly named: string }[] => {
  const named = fields.hard.filter((id) => id !== ALL_DUE && selection.has(id));
  if (!fields.hard.includes(ALL_DUE)) return named.map((id) => ({ operation: id, named: id }));

  const here = order.get(fields.station) ?? 0;
  const earlier = [...selection.values()].filter(
    (other) =>
      (order.get(other.fields.station) ?? 0) < here &&
      other.fields.scope === fields.scope &&
      other.row.id !== row.id &&
      !named.includes(other.row.id),
  );
  return [
    ...named.map((id) => ({ operation: id, named: id })),
    ...earlier.map((other) => ({ operation: other.row.id, named: ALL_DUE })),
  ];
};
