import type { Chance } from './random';

/**
 * What goes wrong in the demonstration plant beyond the everyday, by share of the year gone by.
 * Each is there to be found by the screens: a crew, a drift, a lot, an escape.
 */
export type Story = {
  /** How many times likelier than every day an operation is to fall short now. */
  readonly trouble: (operation: string, yearGone: number) => number;
  /** A lot opened now is the bad one. */
  readonly badLot: (kind: string, yearGone: number) => boolean;
  /** The crew member who was short on nails while it lasted. */
  readonly shortOnNails: (yearGone: number) => boolean;
};

/** A crew short on nails for six weeks: straps with too few, some found only at the look before cover. */
const NAILS = { from: 0.44, to: 0.56, operations: ['floor-strapped', 'roof-strapped'], times: 8 };
/** Insulation slides slowly through the last third of the year. */
const DRIFT = { from: 0.62, operations: ['walls-insulated', 'joints-sealed'], times: 4 };
/** One lot of receptacles, opened in the middle of the year, that loosens in use: early enough for owners to notice. */
const LOT = { kind: 'receptacle', from: 0.5, to: 0.53 };

export const theStory: Story = {
  trouble: (operation, yearGone) => {
    if (NAILS.operations.includes(operation) && yearGone >= NAILS.from && yearGone < NAILS.to)
      return NAILS.times;
    if (DRIFT.operations.includes(operation) && yearGone > DRIFT.from) {
      return 1 + ((DRIFT.times - 1) * (yearGone - DRIFT.from)) / (1 - DRIFT.from);
    }
    return 1;
  },
  badLot: (kind, yearGone) => kind.startsWith(LOT.kind) && yearGone >= LOT.from && yearGone < LOT.to,
  shortOnNails: (yearGone) => yearGone >= NAILS.from && yearGone < NAILS.to,
};

/** A fault as the plant's own map has it: what shows, and what likely caused it. */
export type Fault = { readonly component: string; readonly symptom: string; readonly operation: string };

export const faultsByOperation = (
  map: readonly {
    readonly component: string;
    readonly symptom: string;
    readonly operations: readonly string[];
  }[],
): ReadonlyMap<string, readonly Fault[]> => {
  const by = new Map<string, Fault[]>();
  for (const { component, symptom, operations } of map) {
    const [likeliest] = operations;
    if (likeliest === undefined) continue;
    by.set(likeliest, [...(by.get(likeliest) ?? []), { component, symptom, operation: likeliest }]);
  }
  return by;
};

/** When somebody notices. */
export type Noticed = 'at-once' | 'later' | 'in-the-field';

export const noticedWhen = (chance: Chance): Noticed => {
  const draw = chance.next();
  if (draw < 0.72) return 'at-once';
  return draw < 0.96 ? 'later' : 'in-the-field';
};
