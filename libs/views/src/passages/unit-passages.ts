import type { FindingClass } from '@libs/judge';

/** What a unit's passages and the defects charged to them are worked out from. */
export type UnitPassages = {
  readonly serial: string;
  readonly home: string;
  readonly model: string;
  readonly design: { readonly [attribute: string]: string };
  readonly steps: readonly Step[];
  readonly shops: readonly ShopPassage[];
  readonly defects: { readonly [defect: string]: ChargedDefect };
  /** Crews that recorded work, each with the station where they did it. */
  readonly crews: Pairs;
  /** Lots recorded, each with its operation, whichever entry of it they came with. */
  readonly lots: Pairs;
};

/** Each a name and what stands with it, as `pair` makes one: a short list is copied faster than an object of lists. */
export type Pairs = readonly string[];
export const pair = (name: string, with_: string): string => `${name}\n${with_}`;
export const pairedWith = (name: string, pairs: Pairs): readonly string[] => {
  const before = pair(name, '');
  return pairs
    .filter((one) => one.startsWith(before))
    .map((one) => one.slice(before.length))
    .sort();
};
export const withoutName = (name: string, pairs: Pairs): Pairs => {
  const before = pair(name, '');
  return pairs.some((one) => one.startsWith(before)) ? pairs.filter((one) => !one.startsWith(before)) : pairs;
};

/** The section came to a station, or left the plant (`to` null). A pulled section is still at its station. */
export type Step = {
  readonly at: string;
  readonly position: number;
  readonly from: string | null;
  readonly to: string | null;
  /** Nothing of `from` was left open; null where the event does not say. */
  readonly complete: boolean | null;
  /** Shipped: stations with work still open. */
  readonly leftOpen: readonly string[];
};

export type ShopPassage = {
  readonly station: string;
  readonly since: string;
  readonly leftAt: string;
  readonly complete: boolean;
};

/** A withdrawn defect is not here any more. */
export type ChargedDefect = {
  readonly class: FindingClass;
  readonly component: string;
  readonly symptom: string;
  /** Of the finding that opened it; null where a person did, or the finding is of no value. */
  readonly characteristic: string | null;
  readonly place: string | null;
  readonly foundAt: string | null;
  readonly operation: string | null;
  readonly charged: string | null;
  readonly quantity: number;
  readonly madeBy: string | null;
  readonly occurredAt: string;
  readonly recordedAt: string;
  readonly position: number;
  readonly state: 'open' | 'reworked' | 'closed';
  readonly reworkedAt: string | null;
  readonly reworkedBy: string | null;
  readonly severity: 'minor' | 'major' | 'critical' | null;
  readonly disposition: 'rework' | 'repair' | 'use-as-is' | 'scrap' | null;
  /** Found by the inspection agency. */
  readonly agency: boolean;
};

export const noPassages = (serial: string): UnitPassages => ({
  serial,
  home: serial,
  model: '',
  design: {},
  steps: [],
  shops: [],
  defects: {},
  crews: [],
  lots: [],
});
