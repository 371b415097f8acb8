import type { Words } from '@libs/judge';
import { unitSays } from './value-says';
import { same } from './say';

/** What the plant calls things: made from the rulebook in force. An unknown id is shown as it is. */
export type Names = {
  readonly operation: (id: string) => Words;
  readonly station: (id: string) => Words;
  readonly place: (id: string) => Words;
  readonly characteristic: (operation: string, id: string) => Words;
  readonly component: (id: string) => Words;
  readonly symptom: (id: string) => Words;
  readonly crew: (id: string) => Words;
  /** Reason codes of holds, pulls and corrections. */
  readonly reason: (id: string) => Words;
  readonly lotKind: (id: string) => Words;
  readonly instrumentKind: (id: string) => Words;
  readonly unitSymbol: (code: string) => Words;
  /** A value that the plant names in words: `foremost cross member`. */
  readonly text: (value: string) => Words;
  /** A fact of the design: `wind zone II`. */
  readonly designFact?: (attribute: string, value: string) => Words | undefined;
  /** What a defect is, by its id, where the reader has its history at hand. */
  readonly defect?: (id: string) => Words | undefined;
  /** What a hold is for, likewise. */
  readonly hold?: (id: string) => Words | undefined;
};

type Named = { readonly id: string; readonly name: Words };

/** The lists of a rulebook that give things their names; the plant's answer to a screen has most of them too. */
export type NameLists = {
  readonly operations: readonly Named[];
  readonly stations: readonly Named[];
  readonly places: readonly Named[];
  readonly components: readonly Named[];
  readonly symptoms: readonly Named[];
  readonly crews: readonly Named[];
  readonly reasons?: readonly Named[];
  readonly lotKinds?: readonly Named[];
  readonly instrumentKinds?: readonly Named[];
  readonly texts?: readonly Named[];
  readonly attributes?: readonly {
    readonly id: string;
    readonly values: readonly { readonly value: string; readonly says: Words }[];
  }[];
};

/** `label` knows the characteristics: a plan has them with each operation. */
export const namesFrom = (
  lists: NameLists,
  label: (operation: string, characteristic: string) => Words | undefined = () => undefined,
): Names => ({
  operation: lookUp(lists.operations),
  station: lookUp(lists.stations),
  place: lookUp(lists.places),
  component: lookUp(lists.components),
  symptom: lookUp(lists.symptoms),
  crew: lookUp(lists.crews),
  reason: lookUp(lists.reasons ?? []),
  lotKind: lookUp(lists.lotKinds ?? []),
  instrumentKind: lookUp(lists.instrumentKinds ?? []),
  characteristic: (operation, id) => label(operation, id) ?? same(id),
  unitSymbol: unitSays,
  text: lookUp(lists.texts ?? []),
  designFact: (attribute, value) =>
    lists.attributes?.find(({ id }) => id === attribute)?.values.find((one) => one.value === value)?.says,
});

const lookUp = (list: readonly Named[]): ((id: string) => Words) => {
  const names = new Map(list.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? same(id);
};
