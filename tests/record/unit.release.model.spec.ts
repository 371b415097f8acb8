import fc from 'fast-check';
import { isProven } from '@libs/judge';
import type { CompiledPlan, Signer } from '@libs/judge';
import { SECTION } from '@libs/record';
import type { RecordedUnitEvent, Unit, UnitCommand, UnitEvent, UnitFacts } from '@libs/record';
import { requires } from '../support/judging';
import {
  FACTS,
  INSPECTOR,
  LEAD,
  MANAGER,
  PLAN,
  SERIAL,
  inches,
  onLine,
  recordWork,
  standing,
  withdraw,
} from '../support/unit-spec';

/**
 * Goal: whatever is told, corrected and taken back, in whatever order, no label goes on while anything is open, and
 * what a label vouches for is never undone without an event that says so.
 * Method: throw random commands at the real decider and reckon from the events alone what was open at each moment.
 */

const AGENCY: Signer = { actor: 'agency', crew: null, roles: ['agency-inspector'] };
const REQUIRED = ['framed', 'wired', 'plated', 'looked', 'boarded', 'tested'] as const;

/** The small line, with a label that needs all of it and a test that says something of the wiring. */
const LABEL_PLAN: CompiledPlan = {
  ...PLAN,
  operations: {
    ...PLAN.operations,
    labelled: { ...operationOf('labelled'), requires: requires(...REQUIRED) },
    tested: { ...operationOf('tested'), requires: requires('wired') },
  },
};

function operationOf(id: string): CompiledPlan['operations'][string] {
  const operation = PLAN.operations[id];
  if (operation === undefined) throw new Error(`The plan has no ${id}`);
  return operation;
}

type Step = {
  readonly command: UnitCommand;
  readonly by: Signer;
  readonly minute: number;
  readonly facts: Partial<UnitFacts>;
};
type Day = { readonly events: readonly RecordedUnitEvent[]; readonly state: Unit };

const PLATE = {
  station: 'rough-in',
  lot: { lot: 'P-1', kind: 'plate', usable: true, properties: [inches('thickness', '0.07')] },
};
const GAUGE = { instrument: 'G-1', kind: 'gauge', usable: true, properties: [] };
const PSI = { characteristic: 'pressure', value: '3.2', unit: '[psi]' };

const work = (operation: string): UnitCommand =>
  recordWork(operation, operation === 'tested' ? { values: [PSI], instrument: 'G-1' } : {});

const told = (type: UnitCommand['type'], data: object): UnitCommand =>
  ({ type, data: { serial: SERIAL, ...data } }) as unknown as UnitCommand;

const anyId = fc.tuple(fc.nat(60), fc.nat(3)).map(([key, index]) => `k${String(key)}-${String(index)}`);
const anyOperation = fc.constantFrom(...REQUIRED);
const anyPlaces = fc.constantFrom<readonly string[]>([], ['kitchen']);
const anyTag = fc.constantFrom('R-1', 'R-2');

const anyTrouble = fc.oneof(
  anyOperation.map((operation) => withdraw(operation)),
  fc
    .record({ operation: fc.constantFrom('boarded', 'plated'), places: anyPlaces })
    .map((open) => told('OpenCover', { ...open, also: [], defect: null })),
  fc
    .record({ class: fc.constantFrom('nonconformance', 'punch', 'shortage'), hold: fc.boolean() })
    .map((kind) =>
      told('RecordDefect', {
        ...kind,
        defect: '',
        component: 'outlet',
        symptom: 'loose',
        place: null,
        foundAt: 'final',
        operation: 'wired',
        photos: [],
        quantity: 1,
      }),
    ),
  fc
    .constantFrom(null, 'labelled')
    .map((operation) => told('PlaceHold', { hold: '', reason: 'look-again', operation })),
  anyTag.map((tag) => told('PlaceRedTag', { tag, defect: null, rule: null })),
);
const anyMending = fc.oneof(
  anyId.map((defect) => told('RecordRework', { defect, crew: null })),
  fc
    .record({ defect: anyId, accepted: fc.boolean() })
    .map(({ defect, accepted }) => told('VerifyDefect', { defect, accepted })),
  anyId.map((defect) => told('CloseDefect', { defect, how: 'fitted' })),
  fc.constant(told('SignPunchList', { defects: [] })),
  anyId.map((defect) =>
    told('DispositionDefect', { defect, disposition: 'use-as-is', detail: null, approval: 'sealed' }),
  ),
  anyId.map((hold) => told('ReleaseHold', { hold })),
  anyTag.map((tag) => told('LiftRedTag', { tag })),
);
const anyLabel = fc.constantFrom(
  told('AffixLabel', { number: 'ABC000001', photos: [] }),
  told('AffixLabel', { number: 'ABC000001', photos: [] }),
  told('ReplaceLabel', { number: 'ABC000002', reason: 'damaged', photos: [] }),
);
/** Mostly the agency has been there and nothing is quarantined; else no label would ever go on. */
const anyFacts = fc.record({
  agencySaw: fc.constantFrom<readonly string[]>(['rough-in'], ['rough-in'], ['rough-in'], []),
  unusable: fc.constantFrom<UnitFacts['unusable']>(
    [],
    [],
    [],
    [{ operation: 'plated', rule: 'lot-not-usable', kind: 'plate', id: 'P-1' }],
  ),
});

const anyStep: fc.Arbitrary<Step> = fc.record({
  command: fc.oneof(
    { weight: 5, arbitrary: anyOperation.map(work) },
    { weight: 3, arbitrary: anyTrouble },
    { weight: 6, arbitrary: anyMending },
    { weight: 5, arbitrary: anyLabel },
  ),
  by: fc.constantFrom(LEAD, INSPECTOR, INSPECTOR, MANAGER, AGENCY),
  minute: fc.nat(59),
  facts: anyFacts,
});
const good = (command: UnitCommand, by: Signer): Step => ({ command, by, minute: 0, facts: {} });
const GOOD_STEPS: readonly Step[] = REQUIRED.map((operation) =>
  good(work(operation), operation === 'looked' || operation === 'tested' ? INSPECTOR : LEAD),
);
/** Mostly a good shift first, else no label would ever go on. */
const anyDay = fc
  .tuple(
    fc.oneof(
      { weight: 3, arbitrary: fc.constant([...GOOD_STEPS]) },
      { weight: 1, arbitrary: fc.subarray([...GOOD_STEPS], { minLength: 4 }) },
    ),
    fc.array(anyStep, { maxLength: 40 }),
  )
  .map(([first, steps]) => [...first, ...steps]);

const after = (day: Day, events: readonly UnitEvent[], { by, minute }: Step): Day => {
  const at = `2026-03-02T12:${String(minute).padStart(2, '0')}:00.000-06:00`;
  const stood = events.map((event, index) => standing(event, day.events.length + index + 1, { by, at }));
  return { events: [...day.events, ...stood], state: stood.reduce(SECTION.evolve, day.state) };
};

/** As the plant names defects and holds told by hand: by the key they were sent under. */
const named = ({ type, data }: UnitCommand, index: number): UnitCommand => {
  const id = `k${String(index)}-0`;
  if (type === 'RecordDefect') return { type, data: { ...data, defect: id } };
  return type === 'PlaceHold' ? { type, data: { ...data, hold: id } } : ({ type, data } as UnitCommand);
};

const decide = (day: Day, step: Step, index: number): readonly UnitEvent[] => {
  const decision = SECTION.decide(named(step.command, index), day.state, {
    ...FACTS,
    plan: LABEL_PLAN,
    signer: step.by,
    mounted: [PLATE],
    instrument: GAUGE,
    idBase: `k${String(index)}`,
    occurredAt: `2026-03-02T12:${String(step.minute).padStart(2, '0')}:00.000-06:00`,
    ...step.facts,
  });
  return decision.ok ? decision.events : [];
};

const play = (
  steps: readonly Step[],
  look: (before: Day, step: Step, recorded: readonly UnitEvent[], later: Day) => void = () => undefined,
): Day =>
  steps.reduce<Day>(
    (day, step, index) => {
      const recorded = decide(day, step, index);
      const later = after(day, recorded, step);
      look(day, step, recorded, later);
      return later;
    },
    after({ events: [], state: SECTION.initial }, onLine('final'), good(work('framed'), LEAD)),
  );

/** What is open by the events alone. */
const openIn = (events: readonly RecordedUnitEvent[]): readonly string[] => {
  const open = new Set<string>();
  for (const { type, data } of events) {
    if (type === 'DefectRecorded') open.add(`defect ${data.defect}`);
    if (type === 'DefectClosed' || (type === 'DefectVerified' && data.accepted)) {
      open.delete(`defect ${data.defect}`);
    }
    if (type === 'HoldPlaced') open.add(`hold ${data.hold}`);
    if (type === 'HoldReleased') open.delete(`hold ${data.hold}`);
    if (type === 'RedTagPlaced') open.add(`tag ${data.tag}`);
    if (type === 'RedTagLifted') open.delete(`tag ${data.tag}`);
  }
  return [...open];
};

const labels = (recorded: readonly UnitEvent[]): boolean =>
  recorded.some(({ type }) => type === 'LabelAffixed' || type === 'LabelReplaced');

const RUNS = { numRuns: 600 } as const;

describe('whatever is told, corrected and taken back', () => {
  it('no label goes on with a defect, a hold or a red tag open, from a quarantined lot, or unseen', () => {
    fc.assert(
      fc.property(anyDay, (steps) => {
        play(steps, (before, { facts }, recorded, later) => {
          if (!labels(recorded)) return;
          expect(openIn(before.events)).toStrictEqual([]);
          expect(openIn(later.events)).toStrictEqual([]);
          expect(facts.unusable ?? []).toStrictEqual([]);
          expect(facts.agencySaw ?? ['rough-in']).not.toStrictEqual([]);
          const unproven = REQUIRED.filter((id) => !isProven(LABEL_PLAN, later.state, id));
          expect(unproven).toStrictEqual([]);
        });
      }),
      RUNS,
    );
  });

  it('no label goes on over a test older than the work it tested', () => {
    fc.assert(
      fc.property(anyDay, (steps) => {
        play(steps, ({ state }, _step, recorded) => {
          if (!labels(recorded)) return;
          const [tested, wired] = [state.work['tested'], state.work['wired']];
          expect((tested?.occurredAt ?? '') >= (wired?.occurredAt ?? '9')).toBe(true);
        });
      }),
      RUNS,
    );
  });

  it('what a label vouches for is not undone without an event that names it', () => {
    fc.assert(
      fc.property(anyDay, (steps) => {
        play(steps, (before, _step, recorded, later) => {
          if (before.state.label === null) return;
          for (const id of REQUIRED) {
            const isUndone = isProven(LABEL_PLAN, before.state, id) && !isProven(LABEL_PLAN, later.state, id);
            if (!isUndone) continue;
            expect(JSON.stringify(recorded)).toContain(`"${id}"`);
            expect(recorded.map(({ type }) => type)).toStrictEqual(
              expect.arrayContaining([
                expect.stringMatching(/^(?:WorkWithdrawn|CoverOpened|WorkRecorded|TestRecorded)$/),
              ]),
            );
          }
        });
      }),
      RUNS,
    );
  });

  it('labels go on now and then, so that what is said of them says something', () => {
    let affixed = 0;
    let refused = 0;
    let undone = 0;
    for (const steps of fc.sample(anyDay, { numRuns: 600, seed: 7 })) {
      play(steps, (before, _step, recorded, later) => {
        if (labels(recorded)) affixed += 1;
        if (recorded.some(({ type }) => type === 'LabelRefused')) refused += 1;
        const fell = REQUIRED.some(
          (id) => isProven(LABEL_PLAN, before.state, id) && !isProven(LABEL_PLAN, later.state, id),
        );
        if (before.state.label !== null && fell) undone += 1;
      });
    }
    expect([affixed > 30, refused > 300, undone > 5]).toStrictEqual([true, true, true]);
  });

  it('comes to the same state when its history is read again', () => {
    fc.assert(
      fc.property(anyDay, (steps) => {
        const { events, state } = play(steps);
        expect(events.reduce(SECTION.evolve, SECTION.initial)).toStrictEqual(state);
      }),
      { numRuns: 200 },
    );
  });
});
