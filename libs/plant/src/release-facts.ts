import type { CompiledPlan } from '@libs/judge';
import { floorDay } from '@libs/kernel';
import type { Meta, ReadStream } from '@libs/kernel';
import {
  HOME,
  INSTRUMENT,
  LOT,
  SECTION,
  STATION,
  isUsableInstrument,
  isUsableLot,
  usedIn,
} from '@libs/record';
import type { HeldStation, Unit, UnitFacts, UnusablePart } from '@libs/record';
import type { Wanted } from './wanted';

type ReleaseFacts = Pick<UnitFacts, 'agencySaw' | 'unusable'>;

const NOT_ASKED: ReleaseFacts = { agencySaw: [], unusable: [] };

/** What only a label wants to know: read where one may go on, and nowhere else. */
export const releaseFacts = (read: ReadStream, meta: Meta, unit: Unit, { forLabel }: Wanted): ReleaseFacts =>
  forLabel === true
    ? { agencySaw: stagesSeen(read, unit), unusable: unusableParts(read, unit, floorDay(meta.occurredAt)) }
    : NOT_ASKED;

/** On whichever of the home's sections: each home in at least one stage. */
const stagesSeen = (read: ReadStream, unit: Unit): readonly string[] => [
  ...new Set([
    ...read(HOME, unit.home).seen,
    ...unit.sections.flatMap((serial) => read(SECTION, serial).seen),
  ]),
];

/** A lot past its day was good when it went in; one quarantined since, and a gauge found out of tolerance, are not. */
export const unusableParts = (read: ReadStream, unit: Unit, day: string): readonly UnusablePart[] => [
  ...usedLots(unit).flatMap(({ operation, lot: id }): readonly UnusablePart[] => {
    const lot = read(LOT, id);
    const isFit = lot.kind === null || isUsableLot({ ...lot, usableUntil: null }, day);
    return isFit ? [] : [{ operation, rule: 'lot-not-usable', kind: lot.kind, id }];
  }),
  ...usedInstruments(unit).flatMap(({ operation, instrument: id }): readonly UnusablePart[] => {
    const instrument = read(INSTRUMENT, id);
    const isFit = instrument.kind === null || isUsableInstrument({ ...instrument, dueOn: null }, day);
    return isFit ? [] : [{ operation, rule: 'instrument-not-usable', kind: instrument.kind, id }];
  }),
];

const usedLots = (unit: Unit): Unit['builtIn'] => {
  const used = Object.entries(unit.evidence).flatMap(([operation, evidence]) => usedIn(operation, evidence));
  const known = new Map(
    [...unit.builtIn, ...used].map((one) => [`${one.operation} ${one.lot}`, one] as const),
  );
  return [...known.values()];
};

const usedInstruments = (
  unit: Unit,
): readonly { readonly operation: string; readonly instrument: string }[] =>
  Object.entries(unit.evidence).flatMap(([operation, { instrument }]) =>
    instrument === null ? [] : [{ operation, instrument }],
  );

/** Of the stations whose operations a command is about. */
export const heldStations = (
  read: ReadStream,
  plan: CompiledPlan | null,
  { asks }: Wanted,
): readonly HeldStation[] => {
  const station = plan === null || asks === undefined ? undefined : plan.operations[asks]?.station;
  if (station === undefined) return [];

  const { held } = read(STATION, station);
  return held === null ? [] : [{ station, hold: held.hold, reason: held.reason }];
};
