import type { Dice } from './dice';
import type { PlantShape, PlantedOperation } from './plant-shape';

/** A section of an invented home, in the order it was built. */
export type Section = {
  readonly serial: string;
  readonly home: number;
  readonly dry: boolean;
};

export type Home = {
  readonly id: string;
  readonly day: number;
  readonly month: number;
  readonly model: number;
  readonly revision: number;
  readonly hauler: number;
  readonly installer: number;
  readonly retailer: number;
  readonly occupied: number;
};

/** What truly happened at one operation of one section, and what the record kept of it. */
export type Work = {
  readonly shift: number;
  readonly crew: number;
  readonly lot: number | null;
  readonly maker: number | null;
  readonly instrument: number | null;
  recorded: boolean;
  readonly marks: Set<string>;
};

export type Line = {
  readonly shape: PlantShape;
  readonly lastDay: number;
  readonly homes: readonly Home[];
  readonly sections: readonly Section[];
  /** By operation, by section. */
  readonly work: readonly (readonly Work[])[];
  /** Lots and their makers, by operation. */
  readonly makersOfLots: readonly (readonly number[])[];
};

export const runLine = (dice: Dice, shape: PlantShape): Line => {
  const homes = buildHomes(dice, shape);
  const sections = homes.flatMap((_, home) =>
    Array.from({ length: shape.sectionsAHome }, (_unused, half) => ({
      serial: `S${home}-${half + 1}`,
      home,
      dry: half === 1,
    })),
  );
  const shifts = sections.map(() => (shape.shifts > 1 && dice.is(0.4) ? 1 : 0));
  const worked = shape.operations.map((operation) => workAt(dice, operation, { homes, sections, shifts }));
  return {
    shape,
    lastDay: (homes.at(-1)?.day ?? 0) + dice.whole(60, 500),
    homes,
    sections,
    work: worked.map(({ work }) => work),
    makersOfLots: worked.map(({ makersOfLots }) => makersOfLots),
  };
};

const buildHomes = (dice: Dice, shape: PlantShape): readonly Home[] => {
  const popularity = Array.from({ length: shape.models }, () => dice.between(0.3, 1));
  const fashion = Array.from({ length: shape.models }, () => dice.between(0, 6));
  const span = shape.homes / shape.homesADay;
  const changes = Array.from({ length: shape.revisions - 1 }, () => dice.between(0.1, 0.9) * span);
  const retailerOfModel = Array.from({ length: shape.models }, () =>
    Array.from({ length: shape.retailers }, () => Math.exp(0.7 * dice.bell())),
  );
  const installersOf = Array.from({ length: shape.retailers }, () =>
    Array.from({ length: shape.installers }, () => Math.exp(1.2 * dice.bell())),
  );
  const haulers = Array.from({ length: shape.haulers }, () => dice.between(0.3, 1));
  return Array.from({ length: shape.homes }, (_, at) => {
    const day = Math.floor(at / shape.homesADay);
    const month = Math.floor(day / 30);
    const model = dice.weighted(
      popularity.map((weight, one) => weight * (1 + 0.8 * Math.sin(month / 3 + (fashion[one] ?? 0)))),
    );
    const retailer = dice.weighted(retailerOfModel[model] ?? []);
    return {
      id: `H${at}`,
      day,
      month,
      model,
      revision: changes.filter((change) => change <= day).length,
      hauler: dice.weighted(haulers),
      installer: dice.weighted(installersOf[retailer] ?? []),
      retailer,
      occupied: day + Math.round(dice.scale(25, 320)),
    };
  });
};

const workAt = (
  dice: Dice,
  operation: PlantedOperation,
  {
    homes,
    sections,
    shifts,
  }: { homes: readonly Home[]; sections: readonly Section[]; shifts: readonly number[] },
): { work: readonly Work[]; makersOfLots: readonly number[] } => {
  const makersOfLots: number[] = [];
  const makerUntil = dice.between(0.2, 0.8) * (homes.at(-1)?.day ?? 0);
  let lotEnds = -1;
  const work = sections.map((section, at) => {
    const home = homes[section.home];
    if (home === undefined) throw new Error(`no home ${section.home}`);
    if (operation.lotDays !== null && home.day >= lotEnds) {
      makersOfLots.push(nextMaker(dice, operation.makers, home.day > makerUntil));
      lotEnds = home.day + Math.max(1, Math.round(-operation.lotDays * Math.log(1 - dice.next())));
    }
    const lot = operation.lotDays === null ? null : makersOfLots.length - 1;
    const shift = shifts[at] ?? 0;
    return {
      shift,
      crew: dice.weighted(operation.crewOdds(shift, home.month, home.model)),
      lot,
      maker: lot === null ? null : (makersOfLots[lot] ?? null),
      instrument: operation.instruments > 0 ? dice.whole(0, operation.instruments - 1) : null,
      recorded: !dice.is(operation.missing),
      marks: marksOf(dice, operation),
    };
  });
  return { work, makersOfLots };
};

/** The first maker delivers until the supplier is changed; then mostly the second, sometimes a third. */
const nextMaker = (dice: Dice, makers: number, changed: boolean): number => {
  if (makers === 1) return 0;
  if (makers === 2) return changed ? 1 : 0;
  return dice.is(0.2) ? 2 : changed ? 1 : 0;
};

const marksOf = (dice: Dice, operation: PlantedOperation): Set<string> => {
  const marks = new Set<string>();
  if (dice.is(operation.late)) marks.add('late');
  if (dice.is(operation.corrected)) marks.add('corrected');
  if (dice.is(operation.nearLimit)) marks.add('near-limit');
  if (dice.is(operation.reworked)) marks.add('reworked');
  if (dice.is(operation.defect)) marks.add('defect');
  return marks;
};
