import type { PlannedOperation } from '@libs/judge';
import { accept, reject } from '@libs/kernel';
import type { SignOffStation } from './unit.commands';
import { entered } from './unit.entering';
import type { Told } from './unit.entering';
import type { StationSignedOff, UnitEvent } from './unit.events';
import { evolve } from './unit.evolve';
import type { UnitFacts } from './unit.facts';
import { judgingOf } from './unit.guards';
import type { Judging } from './unit.guards';
import { lotsFor } from './unit.lots';
import { asRecorded } from './unit.pending';
import type { Guard, UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';
import { first, isKnown, placesGuard, valuesGuard } from './unit.values';

type SignOff = SignOffStation['data'];

/**
 * "All as planned, except ...": one signature, and one entry for each operation it speaks for. They are judged in
 * working order, each with those before it already done.
 */
export const signOffStation = ({ data }: SignOffStation, unit: Unit, facts: UnitFacts): UnitDecision => {
  const ready = judgingOf(unit, facts, data.serial);
  if (!ready.ok) return ready;
  const unfit = signOffGuard(data, ready.judging);
  if (unfit !== null) return reject(unfit);

  const { plan } = ready.judging;
  const operations = signedFor(data, unit, ready.judging);
  const signed: StationSignedOff = {
    type: 'StationSignedOff',
    data: {
      serial: unit.serial,
      station: data.station,
      operations,
      except: data.except,
      ...(data.note === undefined ? {} : { note: data.note }),
    },
    revision: plan.revision,
    planDigest: plan.digest,
  };
  return accept(...allEntered(signed, data, unit, ready.judging));
};

const allEntered = (
  signed: StationSignedOff,
  data: SignOff,
  unit: Unit,
  judging: Judging,
): readonly UnitEvent[] => {
  const events: UnitEvent[] = [signed];
  let state = unit;
  for (const operation of signed.data.operations) {
    const more = entered(state, toldOf(operation, data, judging), judging, events.length);
    state = more.reduce((before, event) => evolve(before, asRecorded(event, judging.facts)), state);
    events.push(...more);
  }
  return events;
};

const signOffGuard = (data: SignOff, judging: Judging): Guard => {
  const { codes, plan } = judging;
  const { station } = data;
  if (!isKnown(codes.stations, station)) return { code: 'station-unknown', station };

  return (
    first(data.except, ({ operation }) => ofStationGuard(operation, station, judging)) ??
    first(data.values, ({ operation }) => ofStationGuard(operation, station, judging)) ??
    first(data.values, ({ operation }) => signedHereGuard(operation, data, judging)) ??
    first(data.except, ({ places }) => placesGuard(places, codes)) ??
    first(data.values, (value) => valuesGuard(plan.operations[value.operation], [value], codes))
  );
};

const ofStationGuard = (operation: string, station: string, { plan, codes }: Judging): Guard => {
  if (!codes.operations.has(operation)) return { code: 'operation-unknown', operation };

  const planned = plan.operations[operation];
  return planned === undefined || planned.station === station
    ? null
    : { code: 'operation-not-of-station', operation, station };
};

/** Inspections and tests have signatures of their own; what was excepted was not done. */
const signedHereGuard = (operation: string, data: SignOff, { plan }: Judging): Guard => {
  const planned = plan.operations[operation];
  if (planned !== undefined && !isOfSignOff(planned)) return { code: 'operation-signed-apart', operation };

  return isExcepted(operation, data) ? { code: 'value-of-excepted', operation } : null;
};

const isOfSignOff = ({ entry }: PlannedOperation): boolean => entry === 'S' || entry === 'V';

const isExcepted = (operation: string, { except }: SignOff): boolean =>
  except.some((excepted) => excepted.operation === operation && excepted.places.length === 0);

/** Due here and not excepted as a whole, and whatever values were given for: nothing told is lost. */
const signedFor = (data: SignOff, unit: Unit, { plan }: Judging): readonly string[] => {
  const given = new Set(data.values.map(({ operation }) => operation));
  const isDue = (planned: PlannedOperation): boolean =>
    planned.station === data.station &&
    planned.scope === unit.kind &&
    isOfSignOff(planned) &&
    !isExcepted(planned.id, data) &&
    isOpen(unit, planned.id);

  const planned = plan.order.filter((id) => {
    const operation = plan.operations[id];
    return operation !== undefined && (given.has(id) || isDue(operation));
  });
  return [...planned, ...[...given].filter((id) => plan.operations[id] === undefined)];
};

const isOpen = (unit: Unit, operation: string): boolean => {
  const done = unit.work[operation];
  return done === undefined || done.except.length > 0;
};

const toldOf = (operation: string, data: SignOff, { plan, facts }: Judging): Told => ({
  operation,
  proof: 'signed',
  except: data.except.filter((excepted) => excepted.operation === operation).flatMap(({ places }) => places),
  values: data.values
    .filter((value) => value.operation === operation)
    .map(({ operation: _operation, ...value }) => value),
  lots: lotsFor(plan.operations[operation], facts),
  instrument: null,
  photos: data.photos,
  crew: data.crew,
});
