import type { Dice } from './dice';
import type { Line, Work } from './line';

export const KINDS = [
  'lot',
  'crew',
  'shift',
  'instrument',
  'drift',
  'design',
  'missed',
  'maker',
  'revision',
  'haul',
  'installer',
  'part',
  'use',
] as const;
export type Kind = (typeof KINDS)[number];

/** The one thing wrong with an invented plant, and how much of it each section has. */
export type PlantedCause = {
  readonly kind: Kind;
  /** Operation or outside cause. */
  readonly source: string;
  readonly factor: string;
  readonly value: string | null;
  /** 1 where the section shares the cause, 0 where it does not. */
  readonly shares: Float64Array;
  readonly operation: number | null;
};

/** Chance that the source is one the fault map names: maps are not complete. */
export const ON_MAP = 0.93;

/** A cause of this kind, or null where this plant cannot have it. */
export const drawCause = (dice: Dice, line: Line, kind: Kind): PlantedCause | null => {
  const source = drawSource(dice, line, kind);
  if (source === null) return null;
  const operation = line.shape.operations.findIndex(({ id }) => id === source);
  return ofKind[kind](dice, line, { source, operation: operation < 0 ? null : operation });
};

const OUTSIDE_OF: { readonly [kind in Kind]?: string } = {
  haul: 'x-road',
  installer: 'x-set',
  part: 'x-maker',
  use: 'x-use',
};

export const MAP_WEIGHT = { a: 5, b: 2.5, c: 1 } as const;

const drawSource = (dice: Dice, { shape }: Line, kind: Kind): string | null => {
  const outside = OUTSIDE_OF[kind];
  if (outside !== undefined) {
    return shape.map.some(({ source }) => source === outside) || dice.is(1 - ON_MAP) ? outside : null;
  }
  const named = shape.map.filter(({ source }) => shape.operations.some(({ id }) => id === source));
  if (dice.is(1 - ON_MAP)) return dice.pick(shape.operations).id;
  return named[dice.weighted(named.map(({ letter }) => MAP_WEIGHT[letter]))]?.source ?? null;
};

type Place = { readonly source: string; readonly operation: number | null };
type OfKind = (dice: Dice, line: Line, place: Place) => PlantedCause | null;

const byWork =
  (kind: Kind, factor: string, valueOf: (work: Work) => number | null): OfKind =>
  (dice, line, { source, operation }) => {
    const work = operation === null ? undefined : line.work[operation];
    if (work === undefined) return null;
    const values = [...new Set(work.map(valueOf).filter((value) => value !== null))];
    if (values.length < 2) return null;
    const value = dice.pick(values);
    return {
      kind,
      source,
      factor,
      value: nameOf(factor, operation, value),
      shares: Float64Array.from(work, (one) => (valueOf(one) === value ? 1 : 0)),
      operation,
    };
  };

/** Lots, makers and instruments have names that say at which operation they were first used. */
export const nameOf = (factor: string, operation: number | null, value: number): string =>
  factor === 'lot' || factor === 'maker' || factor === 'instrument'
    ? `${factor}-${(operation ?? 0) + 1}-${value}`
    : `${factor}-${value}`;

const byHome =
  (kind: Kind, factor: string, valueOf: (home: Line['homes'][number]) => number): OfKind =>
  (dice, line, { source, operation }) => {
    const values = [...new Set(line.homes.map(valueOf))];
    if (values.length < 2) return null;
    const value = dice.pick(values);
    const shares = Float64Array.from(line.sections, ({ home }) =>
      valueOf(homeAt(line, home)) === value ? 1 : 0,
    );
    return { kind, source, factor, value: nameOf(factor, null, value), shares, operation };
  };

const homeAt = (line: Line, at: number): Line['homes'][number] => {
  const home = line.homes[at];
  if (home === undefined) throw new Error(`no home ${at}`);
  return home;
};

export const DRIFT = { shortest: 0.04, longest: 0.35 } as const;

const drift: OfKind = (dice, line, { source, operation }) => {
  const days = (line.homes.at(-1)?.day ?? 0) + 1;
  const length = Math.max(7, days * dice.between(DRIFT.shortest, DRIFT.longest));
  const from = dice.between(0, days - length);
  const shares = Float64Array.from(line.sections, ({ home }) => {
    const { day } = homeAt(line, home);
    return day >= from && day < from + length ? 1 : 0;
  });
  return { kind: 'drift', source, factor: 'window', value: null, shares, operation };
};

const missed: OfKind = (dice, line, { source, operation }) => {
  const chance = dice.between(0.02, 0.12);
  const shares = Float64Array.from(line.sections, () => (dice.is(chance) ? 1 : 0));
  return { kind: 'missed', source, factor: 'unrecorded', value: null, shares, operation };
};

/** A bought part is bad by its lot or by its maker, at whichever operation it is fitted. */
const part: OfKind = (dice, line, { source }) => {
  const withLots = line.shape.operations.flatMap(({ lotDays }, at) => (lotDays === null ? [] : [at]));
  if (withLots.length === 0) return null;
  const operation = dice.pick(withLots);
  const drawn = (dice.is(0.5) ? ofKind.lot : ofKind.maker)(dice, line, { source, operation });
  return drawn === null ? null : { ...drawn, kind: 'part', operation: null };
};

const ofKind: { readonly [kind in Kind]: OfKind } = {
  lot: byWork('lot', 'lot', ({ lot }) => lot),
  crew: byWork('crew', 'crew', ({ crew }) => crew),
  shift: byWork('shift', 'shift', ({ shift }) => shift),
  instrument: byWork('instrument', 'instrument', ({ instrument }) => instrument),
  maker: byWork('maker', 'maker', ({ maker }) => maker),
  drift,
  missed,
  design: byHome('design', 'design', ({ model }) => model),
  revision: byHome('revision', 'revision', ({ revision }) => revision),
  haul: byHome('haul', 'hauler', ({ hauler }) => hauler),
  installer: byHome('installer', 'installer', ({ installer }) => installer),
  part,
  use: (_dice, line, { source }) => ({
    kind: 'use',
    source,
    factor: 'every',
    value: null,
    shares: new Float64Array(line.sections.length).fill(1),
    operation: null,
  }),
};
