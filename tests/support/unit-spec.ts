import type { Finding, RecordedValue, Signer } from '@libs/judge';
import type { Recorded, StreamKind } from '@libs/kernel';
import { SECTION } from '@libs/record';
import type { RecordedUnitEvent, Unit, UnitCommand, UnitEvent, UnitFacts } from '@libs/record';
import { PLAN, LEAD, NOON, FACTS, SERIAL } from './unit-plan';
import type { Data } from './unit-told';
import { SOURCE } from './judging';

export * from './unit-plan';
export { told } from './unit-told';

/** Who did what, where it is not a lead at noon. */
export type Signed = { readonly by?: Signer; readonly at?: string };

/** An event as it stands in the ledger, at the next position. */
export const standing = (
  event: UnitEvent,
  position: number,
  { by = LEAD, at = NOON }: Signed = {},
): RecordedUnitEvent => {
  const envelope: Omit<Recorded<UnitEvent>, 'type' | 'data'> = {
    schema: `${event.type}/1`,
    ledger: 'l',
    position,
    stream: `section/${SERIAL}`,
    version: position,
    occurredAt: at,
    recordedAt: '2026-03-02T18:00:00.000Z',
    actor: by.actor,
    assurance: 'pin',
    device: null,
    deviceSeq: null,
    skewMs: null,
    via: 'tablet',
    station: null,
    key: 'before',
    keyIndex: 0,
    revision: event.revision ?? null,
    planDigest: event.planDigest ?? null,
  };
  // Each member of the union keeps its own data; the compiler cannot follow that through a spread.
  return { ...envelope, type: event.type, data: event.data } as RecordedUnitEvent;
};

export const stateAfter = (events: readonly UnitEvent[], signed: Signed = {}): Unit =>
  events.reduce<Unit>(
    (unit, event, index) => SECTION.evolve(unit, standing(event, index + 1, signed)),
    SECTION.initial,
  );

type Answers = {
  /** Exactly these events: order, repetition, every field. */
  readonly records: (...events: readonly UnitEvent[]) => void;
  readonly recordsTypes: (...types: readonly UnitEvent['type'][]) => void;
  readonly recordsNothing: () => void;
  readonly isRejectedAs: (code: string) => void;
  readonly events: () => readonly UnitEvent[];
};

/** Given what happened, when this is told, then exactly this is the answer. */
export const given = (...history: readonly UnitEvent[]) => ({
  when: (command: UnitCommand, facts: Partial<UnitFacts> = {}): Answers =>
    answersOf(SECTION.decide(command, stateAfter(history), { ...FACTS, ...facts })),
});

/** The same where it matters who had done it. */
export const givenBy = (...history: readonly (readonly [UnitEvent, Signed])[]) => ({
  when: (command: UnitCommand, facts: Partial<UnitFacts> = {}): Answers => {
    const unit = history.reduce<Unit>(
      (before, [event, signed], index) => SECTION.evolve(before, standing(event, index + 1, signed)),
      SECTION.initial,
    );
    return answersOf(SECTION.decide(command, unit, { ...FACTS, ...facts }));
  },
});

const answersOf = (
  decision: ReturnType<StreamKind<UnitCommand, Unit, UnitEvent, { code: string }, UnitFacts>['decide']>,
): Answers => ({
  records: (...events) => {
    expect(decision).toStrictEqual({ ok: true, events });
  },
  recordsTypes: (...types) => {
    expect(decision.ok ? decision.events.map(({ type }) => type) : decision).toStrictEqual(types);
  },
  recordsNothing: () => {
    expect(decision).toStrictEqual({ ok: true, events: [] });
  },
  isRejectedAs: (code) => {
    expect(decision).toMatchObject({ ok: false, rejection: { code } });
  },
  events: () => {
    if (!decision.ok) throw new Error(`rejected: ${decision.rejection.code}`);
    return decision.events;
  },
});

const JUDGED = { revision: PLAN.revision, planDigest: PLAN.digest } as const;

export const ordered = (): UnitEvent => ({
  type: 'SectionOrdered',
  data: { serial: SERIAL, home: 'T-1', model: 'Alder', design: {}, sections: [SERIAL, 'T-1B'] },
});
export const started = (at = 'floor'): UnitEvent => ({
  type: 'SectionStarted',
  data: { serial: SERIAL, home: 'T-1', at, revision: 1 },
});
export const onLine = (at = 'floor'): readonly UnitEvent[] => [ordered(), started(at)];

type WorkRecorded = Extract<UnitEvent, { type: 'WorkRecorded' }>;

export const workData = (
  operationId: string,
  change: Partial<WorkRecorded['data']> = {},
): WorkRecorded['data'] => ({
  serial: SERIAL,
  operation: operationId,
  proof: 'signed',
  except: [],
  values: [],
  lots: [],
  instrument: null,
  photos: [],
  crew: 'electrical',
  findings: [],
  missing: [],
  late: false,
  ...change,
});

export const worked = (operationId: string, change: Partial<WorkRecorded['data']> = {}): UnitEvent => ({
  type: 'WorkRecorded',
  data: workData(operationId, change),
  ...JUDGED,
});

export const inches = (characteristic: string, number: string): RecordedValue => ({
  characteristic,
  value: number,
  unit: '[in_i]',
});
export const count = (characteristic: string, number: string): RecordedValue => ({
  characteristic,
  value: number,
  unit: '1',
});

/** All that `wired` is asked for, well within its limits. */
export const WIRED_WELL: readonly RecordedValue[] = [inches('edge', '1.5'), count('plates', '0')];

export const recordWork = (operationId: string, change: Partial<Data<'RecordWork'>> = {}): UnitCommand => ({
  type: 'RecordWork',
  data: {
    serial: SERIAL,
    operation: operationId,
    proof: 'signed',
    except: [],
    values: operationId === 'wired' ? WIRED_WELL : [],
    lots: [],
    instrument: null,
    photos: [],
    crew: null,
    ...change,
  },
});

export const ask = (operationId: string, except: readonly string[] = []): UnitCommand => ({
  type: 'Ask',
  data: { serial: SERIAL, operation: operationId, except },
});

export const withdraw = (operationId: string, movedTo: string | null = null): UnitCommand => ({
  type: 'WithdrawWork',
  data: { serial: SERIAL, operation: operationId, reason: 'misread', movedTo },
});

export const correct = (operationId: string, values: readonly RecordedValue[]): UnitCommand => ({
  type: 'CorrectWork',
  data: { serial: SERIAL, operation: operationId, except: [], values, reason: 'misread' },
});

/** What the plan's own source says of an operation; tests add what was found. */
export const finding = (rule: Finding['rule'], on: string, change: Partial<Finding> = {}): Finding => ({
  rule,
  grade: 'hold',
  class: 'record',
  operation: on,
  station: PLAN.operations[on]?.station ?? null,
  source: SOURCE,
  ...change,
});

export const placed = (hold: string, found: Finding, defect: string | null = null): UnitEvent => ({
  type: 'HoldPlaced',
  data: {
    serial: SERIAL,
    hold,
    reason: found.rule,
    operation: found.operation,
    characteristic: found.characteristic ?? null,
    defect,
    finding: found,
  },
});

export const released = (
  hold: string,
  how: Extract<UnitEvent, { type: 'HoldReleased' }>['data']['how'],
): UnitEvent => ({ type: 'HoldReleased', data: { serial: SERIAL, hold, how } });

/** A defect a rule opened at noon on the floor. */
export const opened = (defect: string, found: Finding, foundAt: string, madeBy?: string): UnitEvent => ({
  type: 'DefectRecorded',
  data: {
    serial: SERIAL,
    defect,
    class: found.class,
    component: found.operation,
    symptom: found.rule,
    place: found.places?.[0] ?? null,
    foundAt,
    operation: found.operation,
    charged: found.station,
    ...(madeBy === undefined ? {} : { madeBy }),
    finding: found,
    photos: [],
    quantity: 1,
  },
});

export const JUDGED_BY_PLAN = JUDGED;
