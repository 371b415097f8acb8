import { epochMs } from '@libs/kernel';
import type { Rulebook } from '@libs/rulebook';
import type { HomeRow, RecordMark, TraceInput, WorkRow } from '@libs/tracing';
import type { Plans } from '../plans';
import type { Calibrated, Gathered, GatheredUnit, GatheredWork } from './gathered';

type About = { readonly component: string; readonly symptom: string; readonly asOf: string };

/** What was gathered, as the tracing library takes it. */
export const traceInput = (gathered: Gathered, plans: Plans, about: About): TraceInput => {
  const rulebook = plans.current()?.rulebook;
  const faults = rulebook?.faults ?? [];
  const operations = rulebook?.operations ?? [];
  const stationOf = new Map(operations.map(({ id, station }) => [id, station]));
  const known: Known = {
    plans,
    stationOf,
    yard: yardIn(rulebook),
    siteWork: new Set(operations.filter(({ scope }) => scope === 'home').map(({ id }) => id)),
  };
  return {
    ...about,
    claims: [...gathered.claims.values()],
    homes: homesIn(gathered, known),
    lots: [...gathered.makers].map(([lot, maker]) => ({ lot, maker })),
    faults,
    operations: operations.map(({ id, station }) => ({ operation: id, station })),
    // Which codes a pattern speaks for is the rulebook's to say, and its files do not say it yet.
    patterns: [],
  };
};

type Known = {
  readonly plans: Plans;
  readonly stationOf: ReadonlyMap<string, string>;
  readonly yard: ReadonlySet<string>;
  readonly siteWork: ReadonlySet<string>;
};

const yardIn = (rulebook: Rulebook | undefined): ReadonlySet<string> =>
  new Set(
    (rulebook?.stations ?? []).filter(({ kind }) => kind === 'yard' || kind === 'site').map(({ id }) => id),
  );

const homesIn = (gathered: Gathered, known: Known): readonly HomeRow[] => {
  const byHome = new Map<string, GatheredUnit[]>();
  for (const unit of gathered.units.values()) {
    if (unit.serial === unit.home || unit.startedOn === null) continue;
    byHome.set(unit.home, [...(byHome.get(unit.home) ?? []), unit]);
  }
  return [...byHome].map(([home, sections]) => homeRow(home, sections, { gathered, known }));
};

type Ground = { readonly gathered: Gathered; readonly known: Known };

const homeRow = (home: string, sections: readonly GatheredUnit[], { gathered, known }: Ground): HomeRow => {
  const whole = gathered.units.get(home);
  return {
    home,
    ...deliveredBy(gathered.deliveries.get(home)),
    sections: sections.map(({ serial, design }) => ({ serial, role: design['role'] ?? null })),
    model: sections[0]?.model ?? null,
    builtOn: sections.map(({ startedOn }) => startedOn ?? '').toSorted()[0] ?? null,
    where: whereIs(sections, known),
    work: [...sections, ...(whole === undefined ? [] : [whole])].flatMap((unit) =>
      workRows(unit, gathered, known),
    ),
  };
};

type Delivered = Pick<HomeRow, 'occupiedOn' | 'hauler' | 'installer' | 'retailer'>;

const deliveredBy = (delivery: Delivered = NOT_DELIVERED): Delivered => {
  const { occupiedOn, hauler, installer, retailer } = delivery;
  return { occupiedOn, hauler, installer, retailer };
};
const NOT_DELIVERED: Delivered = { occupiedOn: null, hauler: null, installer: null, retailer: null };

const whereIs = (sections: readonly GatheredUnit[], { yard }: Known): HomeRow['where'] => {
  if (sections.every(({ stage }) => stage === 'shipped')) return 'sold';
  const isOut = ({ stage, station }: GatheredUnit): boolean =>
    stage === 'shipped' || (station !== null && yard.has(station));
  return sections.every(isOut) ? 'yard' : 'line';
};

const workRows = (unit: GatheredUnit, gathered: Gathered, known: Known): readonly WorkRow[] => [
  ...[...unit.work].map(([operation, work]) => recordedRow(unit, operation, { work, gathered, known })),
  ...missingIn(unit, known).map((operation): WorkRow => ({
    unit: unit.serial,
    operation,
    station: known.stationOf.get(operation) ?? '',
    at: null,
    crew: null,
    shift: null,
    lots: [],
    instruments: [],
    revision: unit.revision === null ? null : String(unit.revision),
    marks: ['missing', ...(unit.marks.get(operation) ?? [])],
  })),
];

const recordedRow = (
  unit: GatheredUnit,
  operation: string,
  { work, gathered, known }: Ground & { readonly work: GatheredWork },
): WorkRow => {
  const { at, crew, lots, instrument, revision } = work;
  const marks: RecordMark[] = [...(unit.marks.get(operation) ?? [])];
  if (instrument !== null && wasOut(gathered.calibrations.get(instrument) ?? [], at))
    marks.push('instrument-out');
  return {
    unit: unit.serial,
    operation,
    station: known.stationOf.get(operation) ?? '',
    at,
    crew,
    // A rulebook names crews and no shifts.
    shift: null,
    lots,
    instruments: instrument === null ? [] : [instrument],
    revision: revision === null ? null : String(revision),
    marks,
  };
};

/** What a plan asks for is missing only once its section has shipped: before, it may still come. */
const missingIn = (unit: GatheredUnit, { plans, siteWork }: Known): readonly string[] => {
  if (unit.stage !== 'shipped' || unit.revision === null) return [];
  const { operations } = plans.planFor(unit.revision, unit.design);
  return Object.keys(operations).filter((operation) => !unit.work.has(operation) && !siteWork.has(operation));
};

/** Measured after it was last found good, and found out of tolerance next. */
const wasOut = (calibrations: readonly Calibrated[], at: string): boolean =>
  calibrations.find((one) => epochMs(one.at) > epochMs(at))?.inTolerance === false;
