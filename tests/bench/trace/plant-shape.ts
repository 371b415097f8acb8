import type { Dice } from './dice';

/** One operation of an invented plant: who does it, with what, and how well its station keeps records. */
export type PlantedOperation = {
  readonly id: string;
  readonly station: string;
  /** Chances of each crew, by shift, month and model: what confounds a crew with a season or a design. */
  readonly crewOdds: (shift: number, month: number, model: number) => readonly number[];
  readonly crews: number;
  /** Days a lot lasts; null where none is mounted. */
  readonly lotDays: number | null;
  readonly makers: number;
  readonly instruments: number;
  readonly missing: number;
  readonly late: number;
  readonly corrected: number;
  readonly nearLimit: number;
  readonly reworked: number;
  readonly defect: number;
};

export type Letter = 'a' | 'b' | 'c';

export type PlantShape = {
  readonly homes: number;
  readonly homesADay: number;
  readonly sectionsAHome: 1 | 2;
  readonly shifts: number;
  readonly models: number;
  readonly revisions: number;
  readonly haulers: number;
  readonly installers: number;
  readonly retailers: number;
  readonly operations: readonly PlantedOperation[];
  /** What the plant's fault map says of the fault in question. It is right most of the time. */
  readonly map: readonly { readonly source: string; readonly letter: Letter }[];
  readonly sectionsNamed: boolean;
  /** Share of claims with an as-found report, and how often such a report names the true source. */
  readonly reported: number;
  readonly reportsRight: number;
};

export const OUTSIDE = ['x-road', 'x-set', 'x-site', 'x-maker', 'x-alter', 'x-use', 'office'] as const;

export const drawShape = (dice: Dice): PlantShape => {
  const stations = dice.whole(5, 11);
  const shifts = dice.whole(1, 2);
  const operations = Array.from({ length: stations * dice.whole(2, 3) }, (_, at) =>
    drawOperation(dice, { id: `op-${at + 1}`, station: `station-${1 + (at % stations)}`, shifts }),
  );
  return {
    homes: Math.round(dice.scale(180, 1600)),
    homesADay: dice.between(1, 4),
    sectionsAHome: dice.is(0.5) ? 2 : 1,
    shifts,
    models: dice.whole(2, 6),
    revisions: dice.whole(1, 4),
    haulers: dice.whole(2, 5),
    installers: dice.whole(3, 9),
    retailers: dice.whole(2, 7),
    operations,
    map: drawMap(dice, operations),
    sectionsNamed: dice.is(0.5),
    reported: dice.is(0.5) ? dice.between(0.4, 0.95) : 0,
    reportsRight: dice.between(0.65, 0.92),
  };
};

const drawOperation = (
  dice: Dice,
  { id, station, shifts }: { id: string; station: string; shifts: number },
): PlantedOperation => {
  const crews = dice.whole(1, 4);
  const base = Array.from({ length: crews }, () => dice.between(0.3, 1));
  const seasonal = Array.from({ length: crews }, () => dice.between(0, 2 * Math.PI));
  const byModel = Array.from({ length: crews }, () =>
    Array.from({ length: 6 }, () => Math.exp(0.6 * dice.bell())),
  );
  const byShift = Array.from({ length: crews }, (_, crew) => (shifts > 1 ? crew % 2 : 0));
  const sway = dice.between(0, 0.8);
  return {
    id,
    station,
    crews,
    crewOdds: (shift, month, model) => {
      const odds = base.map(
        (weight, crew) =>
          weight *
          (byModel[crew]?.[model] ?? 1) *
          (1 + sway * Math.sin(month / 2 + (seasonal[crew] ?? 0))) *
          (shifts > 1 && crews > 1 && byShift[crew] !== shift ? 0.25 : 1),
      );
      const total = odds.reduce((sum, one) => sum + one, 0);
      return odds.map((one) => one / total);
    },
    lotDays: dice.is(0.65) ? dice.scale(1, 20) : null,
    makers: dice.whole(1, 3),
    instruments: dice.is(0.3) ? dice.whole(2, 4) : 0,
    missing: dice.between(0.01, 0.06),
    late: dice.between(0.05, 0.25),
    corrected: dice.between(0.01, 0.06),
    nearLimit: dice.between(0.02, 0.15),
    reworked: dice.between(0.01, 0.06),
    defect: dice.between(0.01, 0.08),
  };
};

const LETTERS: readonly Letter[] = ['a', 'a', 'b', 'b', 'c'];

const drawMap = (dice: Dice, operations: readonly PlantedOperation[]): PlantShape['map'] => {
  const named = new Map<string, Letter>();
  const count = dice.whole(2, 5);
  while (named.size < count) named.set(dice.pick(operations).id, dice.pick(LETTERS));
  const outside = dice.whole(1, 4);
  while (named.size < count + outside) named.set(dice.pick(OUTSIDE), dice.pick(LETTERS));
  return [...named].map(([source, letter]) => ({ source, letter }));
};
