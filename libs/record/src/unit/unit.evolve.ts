import { assertNever } from '@libs/kernel';
import type { Finding, OpenDefect } from '@libs/judge';
import { workCorrected, workEntered, workWithdrawn } from './unit.entries';
import type { RecordedUnitEvent } from './unit.events';
import { entryOf } from './unit.findings';
import type { Unit } from './unit.state';

type Of<T extends RecordedUnitEvent['type']> = Extract<RecordedUnitEvent, { readonly type: T }>;

/** Never refuses, never fails; remembers only what a later decision needs. */
export const evolve = (unit: Unit, event: RecordedUnitEvent): Unit => {
  switch (event.type) {
    case 'WorkRecorded':
    case 'TestRecorded':
      return workEntered(unit, event);
    case 'WorkCorrected':
      return workCorrected(unit, event);
    case 'WorkWithdrawn':
      return workWithdrawn(unit, event);
    case 'AskingCleared':
    case 'AskingRefused':
    case 'StationSignedOff':
      return unit;
    case 'DefectRecorded':
    case 'ReworkDone':
    case 'DefectVerified':
    case 'DefectClosed':
      return defectEvolved(unit, event);
    case 'HoldPlaced':
      return holdPlaced(unit, event);
    case 'HoldReleased':
      return holdReleased(unit, event);
    default:
      return wayEvolved(unit, event);
  }
};

type WayEvent = Of<
  | 'HomeOrdered'
  | 'SectionOrdered'
  | 'HomeStarted'
  | 'SectionStarted'
  | 'SectionMoved'
  | 'SectionPulled'
  | 'SectionReturned'
  | 'SectionShipped'
  | 'LabelAffixed'
>;

/** Ordered, started, moved, labelled, shipped: the unit's way through the plant. */
const wayEvolved = (unit: Unit, event: WayEvent): Unit => {
  const since = event.occurredAt;
  switch (event.type) {
    case 'HomeOrdered':
      return ordered(unit, 'home', event.data.home, event.data);
    case 'SectionOrdered':
      return ordered(unit, 'section', event.data.serial, event.data);
    case 'HomeStarted':
      return { ...unit, stage: 'on-line', since, revision: event.data.revision };
    case 'SectionStarted':
      return { ...unit, stage: 'on-line', since, station: event.data.at, revision: event.data.revision };
    case 'SectionMoved':
      return moved(unit, event);
    case 'SectionPulled':
      return { ...unit, stage: 'pulled', since };
    case 'SectionReturned':
      return { ...unit, stage: 'on-line', since, station: event.data.to };
    case 'SectionShipped':
      return { ...unit, stage: 'shipped', since, station: null };
    case 'LabelAffixed':
      return { ...unit, label: event.data.number };
    default:
      return assertNever(event);
  }
};

const ordered = (
  unit: Unit,
  kind: Unit['kind'],
  serial: string,
  { home, model, design, sections }: Pick<Unit, 'home' | 'model' | 'design' | 'sections'>,
): Unit => ({ ...unit, kind, serial, home, model, design, sections, stage: 'ordered' });

const moved = (unit: Unit, { data, occurredAt }: Of<'SectionMoved'>): Unit => ({
  ...unit,
  station: data.to,
  since: occurredAt,
  shopsLeft:
    data.shops === undefined
      ? unit.shopsLeft
      : [...unit.shopsLeft, ...data.shops.map(({ station }) => station)],
});

const defectEvolved = (
  unit: Unit,
  event: Of<'DefectRecorded' | 'ReworkDone' | 'DefectVerified' | 'DefectClosed'>,
): Unit => {
  switch (event.type) {
    case 'DefectRecorded':
      return defectRecorded(unit, event);
    case 'ReworkDone':
      return withDefect(unit, event.data.defect, { state: 'reworked', reworkedBy: event.actor });
    case 'DefectVerified':
      return event.data.accepted
        ? defectOver(unit, event.data.defect)
        : withDefect(unit, event.data.defect, { state: 'open', reworkedBy: null });
    case 'DefectClosed':
      return defectOver(unit, event.data.defect);
    default:
      return assertNever(event);
  }
};

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
