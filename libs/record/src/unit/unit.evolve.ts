import type { Finding, OpenDefect } from '@libs/judge';
import { workCorrected, workEntered, workWithdrawn } from './unit.entries';
import type { RecordedUnitEvent } from './unit.events';
import { entryOf } from './unit.findings';
import { missingFrom, revisionApplied } from './unit.revision.applied';
import { causeRevised, coverOpened, redTagLifted, redTagPlaced } from './unit.released';
import type { Unit } from './unit.state';

type Of<T extends RecordedUnitEvent['type']> = Extract<RecordedUnitEvent, { readonly type: T }>;

type Evolve<E> = (unit: Unit, event: E) => Unit;

const unchanged = (unit: Unit): Unit => unit;

/** An event without its function does not compile. */
const FUNCTIONS: { readonly [T in RecordedUnitEvent['type']]: Evolve<Of<T>> } = {
  HomeOrdered: (unit, { data }) => ordered(unit, 'home', data.home, data),
  SectionOrdered: (unit, { data }) => ordered(unit, 'section', data.serial, data),
  HomeStarted: (unit, { data, occurredAt }) => ({
    ...unit,
    stage: 'on-line',
    since: occurredAt,
    revision: data.revision,
  }),
  SectionStarted: (unit, { data, occurredAt }) => ({
    ...unit,
    stage: 'on-line',
    since: occurredAt,
    station: data.at,
    revision: data.revision,
  }),
  SectionMoved: (unit, event) => moved(unit, event),
  SectionPulled: (unit, { occurredAt }) => ({ ...unit, stage: 'pulled', since: occurredAt }),
  SectionReturned: (unit, { data, occurredAt }) => ({
    ...unit,
    stage: 'on-line',
    since: occurredAt,
    station: data.to,
  }),
  SectionShipped: (unit, { occurredAt }) => ({ ...unit, stage: 'shipped', since: occurredAt, station: null }),
  LabelAffixed: (unit, { data }) => ({ ...unit, label: data.number }),
  AskingCleared: unchanged,
  AskingRefused: unchanged,
  StationSignedOff: unchanged,
  WorkRecorded: workEntered,
  TestRecorded: workEntered,
  WorkCorrected: workCorrected,
  WorkWithdrawn: workWithdrawn,
  DefectRecorded: (unit, event) => defectRecorded(unit, event),
  ReworkDone: (unit, { data, actor }) =>
    withDefect(unit, data.defect, { state: 'reworked', reworkedBy: actor }),
  DefectVerified: (unit, { data }) =>
    data.accepted
      ? defectOver(unit, data.defect)
      : withDefect(unit, data.defect, { state: 'open', reworkedBy: null }),
  DefectClosed: (unit, { data }) => defectOver(unit, data.defect),
  CauseRevised: causeRevised,
  PunchListSigned: unchanged,
  DefectDispositioned: (unit, { data }) => withDefect(unit, data.defect, { disposition: data.disposition }),
  CoverOpened: coverOpened,
  StageSeen: (unit, { data }) => ({ ...unit, seen: [...new Set([...unit.seen, data.station])] }),
  RedTagPlaced: redTagPlaced,
  RedTagLifted: redTagLifted,
  LabelRefused: unchanged,
  LabelReplaced: (unit, { data }) => ({ ...unit, label: data.number }),
  RevisionApplied: revisionApplied,
  OrderChanged: (unit, event) => orderChanged(unit, event),
  DeviationApproved: (unit, { data }) => ({ ...unit, deviations: [...unit.deviations, data.deviation] }),
  DestinationSet: (unit, { data }) => ({ ...unit, destination: data.destination }),
  HoldPlaced: (unit, event) => holdPlaced(unit, event),
  HoldReleased: (unit, event) => holdReleased(unit, event),
};

/** Never refuses, never fails; remembers only what a later decision needs. */
export const evolve: Evolve<RecordedUnitEvent> = (unit, event) => functionFor(event)(unit, event);

/** The table pairs each event with its own function; the compiler has checked that where it is written. */
const functionFor = ({ type }: RecordedUnitEvent): Evolve<RecordedUnitEvent> =>
  FUNCTIONS[type] as Evolve<RecordedUnitEvent>;

const ordered = (
  unit: Unit,
  kind: Unit['kind'],
  serial: string,
  { home, model, design, sections, destination = null }: Ordered,
): Unit => ({ ...unit, kind, serial, home, model, design, sections, destination, stage: 'ordered' });

type Ordered = Pick<Unit, 'home' | 'model' | 'design' | 'sections'> & Partial<Pick<Unit, 'destination'>>;

/** What the new order asks for, and nobody was asked for then, is missing from here on. */
const orderChanged = (unit: Unit, { data }: Of<'OrderChanged'>): Unit => ({
  ...unit,
  design: data.design,
  work: missingFrom(unit.work, data.findings),
});

const moved = (unit: Unit, { data, occurredAt }: Of<'SectionMoved'>): Unit => ({
  ...unit,
  station: data.to,
  since: occurredAt,
  shopsLeft:
    data.shops === undefined
      ? unit.shopsLeft
      : [...unit.shopsLeft, ...data.shops.map(({ station }) => station)],
});

const defectRecorded = (unit: Unit, { data }: Of<'DefectRecorded'>): Unit => {
  const defect: OpenDefect = {
    defect: data.defect,
    class: data.class,
    operation: data.operation,
    place: data.place,
    component: data.component,
    symptom: data.symptom,
    station: data.charged,
    state: 'open',
    reworkedBy: null,
    ...(data.quantity === 1 ? {} : { quantity: data.quantity }),
    ...(data.severity === undefined ? {} : { severity: data.severity }),
  };
  return {
    ...unit,
    defects: [...unit.defects, defect],
    raised: withRaised(unit, data.defect, data.finding),
  };
};

/** Findings follow the entry they were found in. */
const withRaised = (unit: Unit, id: string, finding: Finding | undefined): Unit['raised'] =>
  finding === undefined
    ? unit.raised
    : { ...unit.raised, [id]: { finding, at: unit.work[entryOf(finding)]?.position ?? null } };

const withDefect = (unit: Unit, id: string, change: Partial<OpenDefect>): Unit => ({
  ...unit,
  defects: unit.defects.map((defect) => (defect.defect === id ? { ...defect, ...change } : defect)),
});

const defectOver = (unit: Unit, id: string): Unit => ({
  ...unit,
  defects: unit.defects.filter(({ defect }) => defect !== id),
  raised: without(unit.raised, id),
  closed: [...unit.closed, id],
});

const holdPlaced = (unit: Unit, { data, occurredAt }: Of<'HoldPlaced'>): Unit => {
  const { hold, reason, operation, characteristic, defect, finding } = data;
  return {
    ...unit,
    holds: [...unit.holds, { hold, reason, operation, characteristic, defect, since: occurredAt }],
    raised: withRaised(unit, hold, finding),
  };
};

const holdReleased = (unit: Unit, { data }: Of<'HoldReleased'>): Unit => ({
  ...unit,
  holds: unit.holds.filter(({ hold }) => hold !== data.hold),
  evidence: data.how === 'satisfied' ? creditLastEntry(unit, data.hold) : unit.evidence,
  raised: without(unit.raised, data.hold),
  laidOpen: unit.laidOpen.filter(({ hold }) => hold !== data.hold),
  closed: [...unit.closed, data.hold],
});

/** The entry just made satisfied this hold: if that entry is withdrawn, the hold has to come back. */
const creditLastEntry = (unit: Unit, id: string): Unit['evidence'] => {
  const hold = unit.holds.find((open) => open.hold === id);
  const finding = unit.raised[id]?.finding;
  const operation = unit.lastEntry;
  const evidence = operation === null ? undefined : unit.evidence[operation];
  if (operation === null || evidence === undefined || hold === undefined || finding === undefined) {
    return unit.evidence;
  }
  return {
    ...unit.evidence,
    [operation]: { ...evidence, satisfied: [...evidence.satisfied, { hold, finding }] },
  };
};

const without = <V>(all: { readonly [id: string]: V }, id: string): { readonly [id: string]: V } => {
  if (!(id in all)) return all;
  const { [id]: _gone, ...rest } = all;
  return rest;
};
