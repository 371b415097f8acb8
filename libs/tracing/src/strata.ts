import type { Slice, Stratum } from './trace-counts';
import type { Unit } from './units';

/** More would leave bands too thin to tell anything, and cost time. */
const BANDS_MOST = 24;
const MODELS_MOST = 12;
const SLICES_MOST = 60;
const DAYS_A_BAND = 30;
const DAYS_A_SLICE = 7;

export type Placed = {
  readonly strata: readonly Stratum[];
  /** Stratum of each unit, -1 while nobody lives in it. */
  readonly stratumOf: readonly number[];
  readonly sliceOf: readonly number[];
  readonly slices: readonly Slice[];
};

/** Sorts units into bands of time and models, and the line's time into slices. */
export const placeUnits = (units: readonly Unit[]): Placed => {
  const days = units.flatMap(({ builtDay }) => (builtDay === null ? [] : [builtDay]));
  const first = days[0] ?? 0;
  const last = days.at(-1) ?? 0;
  const bandLength = Math.max(DAYS_A_BAND, Math.ceil((last - first + 1) / BANDS_MOST));
  const sliceLength = Math.max(DAYS_A_SLICE, Math.ceil((last - first + 1) / SLICES_MOST));
  const modelOf = modelNumbers(units);
  const sliceOf = units.map(({ builtDay }) =>
    builtDay === null ? -1 : Math.floor((builtDay - first) / sliceLength),
  );
  const cells = new StratumCells();
  const stratumOf = units.map((unit) =>
    unit.seasoned === null
      ? -1
      : cells.add(unit, {
          band: unit.builtDay === null ? 0 : Math.floor((unit.builtDay - first) / bandLength),
          model: modelOf(unit),
        }),
  );
  const count = days.length === 0 ? 0 : Math.floor((last - first) / sliceLength) + 1;
  return {
    strata: cells.strata(),
    stratumOf,
    sliceOf,
    slices: slicesOf({ stratumOf, sliceOf }, { first, length: sliceLength, count }),
  };
};

const modelName = (unit: Unit): string => `${unit.home.model ?? ''} ${unit.role ?? ''}`;

/** The commonest models have a number each; the rare ones share the last. */
const modelNumbers = (units: readonly Unit[]): ((unit: Unit) => number) => {
  const counts = new Map<string, number>();
  for (const unit of units) counts.set(modelName(unit), (counts.get(modelName(unit)) ?? 0) + 1);
  const ranked = [...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1)).map(([name]) => name);
  const numbers = new Map(ranked.map((name, at) => [name, Math.min(at, MODELS_MOST - 1)]));
  return (unit) => numbers.get(modelName(unit)) ?? 0;
};

type Cell = { band: number; model: number; units: number; claimed: number; seasoned: number };

class StratumCells {
  private readonly numbers = new Map<number, number>();
  private readonly cells: Cell[] = [];

  add(unit: Unit, { band, model }: { band: number; model: number }): number {
    const key = band * MODELS_MOST + model;
    let number = this.numbers.get(key);
    if (number === undefined) {
      number = this.cells.length;
      this.numbers.set(key, number);
      this.cells.push({ band, model, units: 0, claimed: 0, seasoned: 0 });
    }
    const cell = this.cells[number];
    if (cell !== undefined) {
      cell.units++;
      cell.seasoned += unit.seasoned ?? 0;
      if (unit.claims.length > 0) cell.claimed++;
    }
    return number;
  }

  strata(): readonly Stratum[] {
    return this.cells.map((cell) => ({ ...cell, seasoned: cell.seasoned / cell.units }));
  }
}

const slicesOf = (
  { stratumOf, sliceOf }: Pick<Placed, 'stratumOf' | 'sliceOf'>,
  { first, length, count }: { first: number; length: number; count: number },
): readonly Slice[] => {
  const cells = Array.from({ length: count }, () => new Map<number, number>());
  sliceOf.forEach((slice, unit) => {
    const stratum = stratumOf[unit] ?? -1;
    const cell = cells[slice];
    if (cell !== undefined && stratum >= 0) cell.set(stratum, (cell.get(stratum) ?? 0) + 1);
  });
  return cells.map((byStratum, at) => ({
    fromDay: first + at * length,
    toDay: first + (at + 1) * length - 1,
    cells: [...byStratum].map(([stratum, units]) => ({ stratum, units })),
  }));
};
