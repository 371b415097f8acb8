import type { AnswerOf } from '@libs/contracts';
import { typeOf } from '@libs/ledger';
import type { Ledger } from '@libs/ledger';
import type { Envelope } from '@libs/kernel';
import { epochMs } from '@libs/kernel';
import { HOME, INSTRUMENT, LOT, SECTION, usedIn } from '@libs/record';
import type { Unit } from '@libs/record';
import type { Asked } from './asked';

/** Events that name something, in the order they were recorded. Found by their text, so some may only seem to. */
export type Mentioning = (text: string) => Promise<readonly Envelope[]>;

type Reached = AnswerOf<'lotReach'>['builtInto'][number];
type Looking = {
  readonly ledger: Pick<Ledger, 'state'>;
  readonly mentioning: Mentioning;
};

/** Sections that have a lot built in, as their record stands: work taken back took its lots along. */
export const sectionsWithLot = async (looking: Looking, lot: string): Promise<readonly string[]> => {
  const found: string[] = [];
  for (const unit of await unitsNaming(looking, lot)) {
    if (unit.kind === 'section' && operationsWith(unit, lot).length > 0) found.push(unit.serial);
  }
  return found;
};

const unitsNaming = async ({ ledger, mentioning }: Looking, id: string): Promise<readonly Unit[]> => {
  const streams = new Set((await mentioning(id)).map(({ stream }) => stream));
  const units: Unit[] = [];
  for (const stream of streams) {
    for (const kind of [SECTION, HOME]) {
      if (stream.startsWith(`${kind.name}/`)) {
        units.push(await ledger.state(kind, stream.slice(kind.name.length + 1)));
      }
    }
  }
  return units;
};

const operationsWith = (unit: Unit, lot: string): readonly string[] => {
  const used = Object.entries(unit.evidence).flatMap(([operation, evidence]) => usedIn(operation, evidence));
  return [
    ...new Set([...unit.builtIn, ...used].filter((one) => one.lot === lot).map(({ operation }) => operation)),
  ];
};

export const lotReachQuestion =
  (asked: Asked) =>
  async (lot: string): Promise<AnswerOf<'lotReach'> | undefined> => {
    const { kind, quarantined } = await asked.ledger.state(LOT, lot);
    if (kind === null) return undefined;
    const builtInto: Reached[] = [];
    for (const unit of await unitsNaming(asked, lot)) {
      for (const operation of operationsWith(unit, lot)) {
        builtInto.push(reached(unit, operation, unit.work[operation]?.occurredAt ?? '', asked));
      }
    }
    return { lot, kindName: asked.names.current().lotKind(kind), quarantined, builtInto };
  };

const reached = (unit: Unit, operation: string, at: string, { names }: Asked): Reached => ({
  serial: unit.serial,
  home: unit.kind === 'home' ? unit.serial : unit.home,
  operation,
  operationName: names.ofRevision(unit.revision).operation(operation),
  at,
  station: unit.station,
  stage: unit.stage,
  label: unit.label,
});

/**
 * An instrument found out of tolerance was so nobody knows since when, at worst since it was last found good: every
 * section it measured in between is in question. What was measured and later taken back or made again with another
 * is listed too: somebody relied on it.
 */
export const instrumentReachQuestion =
  (asked: Asked) =>
  async (instrument: string): Promise<AnswerOf<'instrumentReach'> | undefined> => {
    const { kind } = await asked.ledger.state(INSTRUMENT, instrument);
    if (kind === null) return undefined;
    const calibrations = (await asked.ledger.ofStreams([`${INSTRUMENT.name}/${instrument}`])).map(
      calibrationOf,
    );
    const { good, found } = spanInQuestion(calibrations);
    const tested: Reached[] = [];
    for (const event of await asked.mentioning(instrument)) {
      if (!wasMeasured(event, instrument) || !isWithin(event, good, found)) continue;
      const { kind: unitKind, id } = unitOf(event.stream);
      const unit = await asked.ledger.state(unitKind, id);
      const { operation } = event.data;
      if (typeof operation === 'string') tested.push(reached(unit, operation, event.occurredAt, asked));
    }
    return {
      instrument,
      kindName: asked.names.current().instrumentKind(kind),
      goodOn: good,
      foundOn: found,
      tested,
    };
  };

type Calibration = { readonly at: string; readonly inTolerance: boolean };

const calibrationOf = ({ occurredAt, data }: Envelope): Calibration => ({
  at: occurredAt,
  inTolerance: data['inTolerance'] === true,
});

/** From the last good calibration before it was found bad; while it is good, from that calibration on. */
const spanInQuestion = (
  calibrations: readonly Calibration[],
): { readonly good: string | null; readonly found: string | null } => {
  const at = calibrations.findLastIndex(({ inTolerance }) => !inTolerance);
  const before = at < 0 ? calibrations : calibrations.slice(0, at);
  return {
    good: before.findLast(({ inTolerance }) => inTolerance)?.at ?? null,
    found: calibrations[at]?.at ?? null,
  };
};

const MEASURED: ReadonlySet<string> = new Set(['TestRecorded', 'WorkRecorded', 'WorkCorrected']);

const wasMeasured = ({ schema, data }: Envelope, instrument: string): boolean =>
  MEASURED.has(typeOf(schema)) && data['instrument'] === instrument;

const isWithin = ({ occurredAt }: Envelope, good: string | null, found: string | null): boolean =>
  (good === null || epochMs(occurredAt) >= epochMs(good)) &&
  (found === null || epochMs(occurredAt) <= epochMs(found));

const unitOf = (stream: string): { readonly kind: typeof SECTION; readonly id: string } => {
  const kind = stream.startsWith(`${HOME.name}/`) ? HOME : SECTION;
  return { kind, id: stream.slice(kind.name.length + 1) };
};
