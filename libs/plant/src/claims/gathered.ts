import type { Envelope } from '@libs/kernel';
import { floorDay } from '@libs/kernel';
import { typeOf } from '@libs/ledger';
import type {
  RecordedClaimEvent,
  RecordedDeliveryEvent,
  RecordedInstrumentEvent,
  RecordedLotEvent,
  RecordedUnitEvent,
  Unit,
} from '@libs/record';
import type { AsFound, ClaimRow, RecordMark } from '@libs/tracing';

/** One operation of one unit, as the log has it so far. */
export type GatheredWork = {
  readonly at: string;
  readonly crew: string | null;
  readonly lots: readonly string[];
  readonly instrument: string | null;
  readonly revision: number | null;
};

export type GatheredUnit = {
  readonly serial: string;
  readonly home: string;
  model: string;
  design: Unit['design'];
  sections: readonly string[];
  revision: number | null;
  stage: Unit['stage'];
  station: string | null;
  startedOn: string | null;
  readonly work: Map<string, GatheredWork>;
  readonly marks: Map<string, Set<RecordMark>>;
  /** The operation each defect is charged to. */
  readonly defects: Map<string, string>;
};

export type Calibrated = { readonly at: string; readonly inTolerance: boolean };
type Delivered = RecordedDeliveryEvent['data'];

/** What a trace is made of, kept as the log grows. Nothing that is sealed is here. */
export type Gathered = {
  position: number;
  readonly units: Map<string, GatheredUnit>;
  readonly claims: Map<string, ClaimRow>;
  readonly deliveries: Map<string, Delivered>;
  readonly makers: Map<string, string | null>;
  readonly calibrations: Map<string, Calibrated[]>;
};

export const nothingGathered = (): Gathered => ({
  position: 0,
  units: new Map(),
  claims: new Map(),
  deliveries: new Map(),
  makers: new Map(),
  calibrations: new Map(),
});

type Told =
  RecordedUnitEvent | RecordedClaimEvent | RecordedDeliveryEvent | RecordedLotEvent | RecordedInstrumentEvent;

/** The stream's own decider wrote it: its type says what its data are. */
const recordedOf = (envelope: Envelope): Told => ({ ...envelope, type: typeOf(envelope.schema) }) as Told;

export const gather = (gathered: Gathered, envelope: Envelope): void => {
  gathered.position = envelope.position;
  const event = recordedOf(envelope);
  const isUnit = event.stream.startsWith('section/') || event.stream.startsWith('home/');
  if (isUnit) gatherUnit(gathered, event);
  else gatherOther(gathered, event);
};

const gatherOther = (gathered: Gathered, event: Told): void => {
  const { claims } = gathered;
  switch (event.type) {
    case 'ClaimOpened':
      claims.set(event.data.claim, { ...event.data, asFound: null });
      return;
    case 'AsFoundReported': {
      const claim = claims.get(event.data.claim);
      const { pointsTo, speaksAgainst } = event.data;
      const asFound: AsFound = { pointsTo, speaksAgainst };
      if (claim !== undefined) claims.set(claim.claim, { ...claim, asFound });
      return;
    }
    case 'DeliveryRecorded':
      gathered.deliveries.set(event.data.home, event.data);
      return;
    case 'LotReceived':
      gathered.makers.set(event.data.lot, event.data.maker);
      return;
    case 'InstrumentCalibrated': {
      const { instrument, inTolerance } = event.data;
      const soFar = gathered.calibrations.get(instrument) ?? [];
      gathered.calibrations.set(instrument, [...soFar, { at: event.occurredAt, inTolerance }]);
      return;
    }
    default:
  }
};

const gatherUnit = ({ units }: Gathered, event: Told): void => {
  const serial = event.stream.slice(event.stream.indexOf('/') + 1);
  const unit = units.get(serial) ?? newUnit(serial, event);
  units.set(serial, unit);
  gatherWay(unit, event);
  gatherWork(unit, event);
  gatherMarks(unit, event);
};

const newUnit = (serial: string, event: Told): GatheredUnit => ({
  serial,
  home: event.type === 'SectionOrdered' ? event.data.home : serial,
  model: '',
  design: {},
  sections: [],
  revision: null,
  stage: 'ordered',
  station: null,
  startedOn: null,
  work: new Map(),
  marks: new Map(),
  defects: new Map(),
});

/** Where it is, and what it is to be. */
const gatherWay = (unit: GatheredUnit, event: Told): void => {
  switch (event.type) {
    case 'HomeOrdered':
    case 'SectionOrdered':
      unit.model = event.data.model;
      unit.design = event.data.design;
      unit.sections = event.data.sections;
      return;
    case 'SectionStarted':
      unit.stage = 'on-line';
      unit.station = event.data.at;
      unit.revision = event.data.revision;
      unit.startedOn = floorDay(event.occurredAt);
      return;
    case 'SectionMoved':
    case 'SectionReturned':
      unit.stage = 'on-line';
      unit.station = event.data.to;
      return;
    case 'SectionPulled':
      unit.stage = 'pulled';
      return;
    case 'SectionShipped':
      unit.stage = 'shipped';
      return;
    default:
  }
};

const gatherWork = (unit: GatheredUnit, event: Told): void => {
  if (event.type === 'WorkWithdrawn') {
    unit.work.delete(event.data.operation);
    unit.marks.delete(event.data.operation);
    return;
  }
  if (event.type !== 'WorkRecorded' && event.type !== 'TestRecorded' && event.type !== 'WorkCorrected')
    return;

  const { operation, crew, lots, instrument, late, findings } = event.data;
  const before = unit.work.get(operation);
  const isCorrection = event.type === 'WorkCorrected';
  unit.work.set(operation, {
    at: isCorrection && before !== undefined ? before.at : event.occurredAt,
    crew,
    lots,
    instrument,
    revision: event.revision,
  });
  if (isCorrection) mark(unit, operation, 'corrected');
  else if (late) mark(unit, operation, 'late');
  if (findings.some((one) => one.class === 'nonconformance' && one.operation === operation)) {
    mark(unit, operation, 'out-of-limit');
  }
};

const gatherMarks = (unit: GatheredUnit, event: Told): void => {
  switch (event.type) {
    case 'AskingRefused':
      mark(unit, event.data.operation, 'refused');
      return;
    case 'DefectRecorded': {
      const { defect, operation, foundAt } = event.data;
      if (operation === null) return;
      unit.defects.set(defect, operation);
      // What was found in the field is what is being traced: it must not prove itself.
      if (foundAt !== null) mark(unit, operation, 'defect');
      return;
    }
    case 'ReworkDone': {
      const operation = unit.defects.get(event.data.defect);
      if (operation !== undefined) mark(unit, operation, 'reworked');
      return;
    }
    default:
  }
};

const mark = (unit: GatheredUnit, operation: string, one: RecordMark): void => {
  unit.marks.set(operation, (unit.marks.get(operation) ?? new Set()).add(one));
};
