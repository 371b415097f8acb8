import type { Finding } from '@libs/judge';
import type { RecordedUnitEvent } from '@libs/record';
import { pair, withoutName } from './unit-passages';
import type { ChargedDefect, Pairs, Step, UnitPassages } from './unit-passages';

type Of<T extends RecordedUnitEvent['type']> = Extract<RecordedUnitEvent, { readonly type: T }>;

/** Steps and defects as the events tell of them; what they amount to is worked out in passages.ts. */
export const nextPassages = (unit: UnitPassages, event: RecordedUnitEvent): UnitPassages => {
  switch (event.type) {
    case 'SectionOrdered':
    case 'HomeOrdered':
      return { ...unit, home: event.data.home, model: event.data.model, design: inOrder(event.data.design) };
    case 'SectionStarted':
      return { ...stepped(unit, event, { from: null, to: event.data.at }), home: event.data.home };
    case 'SectionMoved':
      return moved(unit, event);
    case 'SectionReturned':
      return stepped(unit, event, { from: null, to: event.data.to });
    case 'SectionShipped':
      return stepped(unit, event, {
        from: null,
        to: null,
        leftOpen: [...openStations(event), ...keptNot(unit, event)],
      });
    case 'DefectRecorded':
      return withDefect(unit, event.data.defect, defectOf(event));
    case 'HoldPlaced':
      return held(unit, event);
    default:
      return mended(unit, event);
  }
};

/** Fresh from its decision an object's members stand in another order than when it is read from the log. */
const inOrder = (design: UnitPassages['design']): UnitPassages['design'] =>
  Object.fromEntries(Object.entries(design).sort(([a], [b]) => (a < b ? -1 : 1)));

/**
 * Most entries bring neither a crew nor a lot that is not known yet, and then nothing changes. A crew stays named
 * when its entry is withdrawn: which crews were at work on a section at a station is all that is kept of entries.
 */
const worked = (
  unit: UnitPassages,
  { data, station: told }: Of<'WorkRecorded' | 'TestRecorded' | 'WorkCorrected'>,
): UnitPassages => {
  // A device that does not say where it is was, most likely, where the section stood.
  const station = told ?? unit.steps.at(-1)?.to ?? null;
  const crews = station === null || data.crew === null ? unit.crews : added(unit.crews, station, [data.crew]);
  const lots = added(unit.lots, data.operation, data.lots);
  return crews === unit.crews && lots === unit.lots ? unit : { ...unit, crews, lots };
};

const added = (pairs: Pairs, name: string, others: readonly string[]): Pairs =>
  others.reduce((all, other) => {
    const one = pair(name, other);
    return all.includes(one) ? all : [...all, one];
  }, pairs);

const mended = (unit: UnitPassages, event: RecordedUnitEvent): UnitPassages => {
  switch (event.type) {
    case 'ReworkDone':
      return change(unit, event.data.defect, {
        state: 'reworked',
        reworkedAt: event.occurredAt,
        reworkedBy: event.data.crew,
      });
    case 'DefectVerified':
      return change(
        unit,
        event.data.defect,
        event.data.accepted ? { state: 'closed' } : { state: 'open', reworkedAt: null, reworkedBy: null },
      );
    case 'DefectClosed':
      return event.data.how === 'withdrawn'
        ? { ...unit, defects: without(unit.defects, event.data.defect) }
        : change(unit, event.data.defect, { state: 'closed' });
    case 'HoldReleased':
      return event.data.how === 'withdrawn'
        ? { ...unit, defects: without(unit.defects, event.data.hold) }
        : change(unit, event.data.hold, { state: 'closed' });
    case 'WorkWithdrawn':
      return {
        ...unit,
        defects: [...event.data.defects, ...event.data.holds].reduce(without, unit.defects),
        lots: withoutName(event.data.operation, unit.lots),
      };
    default:
      return decidedOn(unit, event);
  }
};

/** What the quality manager says of it. */
const decidedOn = (unit: UnitPassages, event: RecordedUnitEvent): UnitPassages => {
  switch (event.type) {
    case 'OrderChanged':
      return { ...unit, design: inOrder(event.data.design) };
    case 'CauseRevised':
      return change(unit, event.data.defect, {
        operation: event.data.operation,
        charged: event.data.charged,
        madeBy: event.data.madeBy ?? null,
      });
    case 'DefectDispositioned':
      return change(unit, event.data.defect, { disposition: event.data.disposition });
    default:
      return builtWith(unit, event);
  }
};

/** Whose work it was, and of what. */
const builtWith = (unit: UnitPassages, event: RecordedUnitEvent): UnitPassages => {
  switch (event.type) {
    case 'WorkRecorded':
    case 'TestRecorded':
    case 'WorkCorrected':
      return worked(unit, event);
    default:
      return unit;
  }
};

/**
 * A missing signature or value is the record's shortfall: no defect is opened for it, so it is counted by the hold
 * it led to, which is released once it is recorded. A defect's own hold is not counted beside the defect.
 */
const held = (unit: UnitPassages, event: Of<'HoldPlaced'>): UnitPassages => {
  const { hold, finding, defect } = event.data;
  return finding?.class === 'record' && defect === null
    ? withDefect(unit, hold, shortfallOf(event, finding))
    : unit;
};

const moved = (unit: UnitPassages, event: Of<'SectionMoved'>): UnitPassages => {
  const { from, to, complete, shops = [] } = event.data;
  const next = stepped(unit, event, { from, to, complete });
  return {
    ...next,
    shops: [
      ...next.shops,
      ...shops.map(({ station, since, complete: whole }) => ({
        station,
        since,
        leftAt: event.occurredAt,
        complete: whole,
      })),
    ],
  };
};

const stepped = (
  unit: UnitPassages,
  { occurredAt, position }: RecordedUnitEvent,
  { from, to, complete = null, leftOpen = [] }: Pick<Step, 'from' | 'to'> & Partial<Step>,
): UnitPassages => ({
  ...unit,
  steps: [...unit.steps, { at: occurredAt, position, from, to, complete, leftOpen }],
});

const openStations = ({ data }: Of<'SectionShipped'>): readonly string[] => [
  ...new Set(
    data.findings.flatMap(({ rule, station }) => (rule === 'left-with-open-work' ? (station ?? []) : [])),
  ),
];

/** A section that ships with a hold or a nonconformance open should have been kept where it stood. */
const keptNot = ({ steps }: UnitPassages, { data }: Of<'SectionShipped'>): readonly string[] => {
  const stood = steps.at(-1)?.to ?? null;
  const isOpen = data.findings.some((finding) => finding.rule === 'held' || isNonconformance(finding));
  return stood !== null && isOpen ? [stood] : [];
};
const isNonconformance = ({ rule, class: ofClass }: Finding): boolean =>
  rule === 'defect-open' && ofClass === 'nonconformance';

const defectOf = ({ data, occurredAt, recordedAt, position }: Of<'DefectRecorded'>): ChargedDefect => ({
  class: data.class,
  component: data.component,
  symptom: data.symptom,
  characteristic: data.finding?.characteristic ?? null,
  place: data.place,
  foundAt: data.foundAt,
  operation: data.operation,
  charged: data.charged,
  quantity: data.quantity,
  madeBy: data.madeBy ?? null,
  occurredAt,
  recordedAt,
  position,
  state: 'open',
  reworkedAt: null,
  reworkedBy: null,
  severity: data.severity ?? null,
  disposition: null,
  agency: data.agency ?? false,
});

const shortfallOf = (
  { station, occurredAt, recordedAt, position }: Of<'HoldPlaced'>,
  finding: Finding,
): ChargedDefect => ({
  class: 'record',
  component: finding.operation,
  symptom: finding.rule,
  characteristic: finding.characteristic ?? null,
  place: null,
  foundAt: station,
  operation: finding.operation,
  charged: finding.station,
  quantity: 1,
  madeBy: null,
  occurredAt,
  recordedAt,
  position,
  state: 'open',
  reworkedAt: null,
  reworkedBy: null,
  severity: null,
  disposition: null,
  agency: false,
});

const withDefect = (unit: UnitPassages, id: string, defect: ChargedDefect): UnitPassages => ({
  ...unit,
  defects: { ...unit.defects, [id]: defect },
});

const change = (unit: UnitPassages, id: string, to: Partial<ChargedDefect>): UnitPassages => {
  const defect = unit.defects[id];
  return defect === undefined ? unit : withDefect(unit, id, { ...defect, ...to });
};

const without = (defects: UnitPassages['defects'], id: string): UnitPassages['defects'] => {
  if (!(id in defects)) return defects;
  const { [id]: _withdrawn, ...rest } = defects;
  return rest;
};
