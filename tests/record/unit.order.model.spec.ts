import fc from 'fast-check';
import type { CompiledPlan, RecordedValue } from '@libs/judge';
import { SECTION, changesUnder } from '@libs/record';
import type { RecordedUnitEvent, Unit, UnitCommand, UnitEvent, UnitFacts } from '@libs/record';
import {
  FACTS,
  INSPECTOR,
  LEAD,
  MANAGER,
  PLAN,
  SERIAL,
  ask,
  count,
  inches,
  onLine,
  recordWork,
  standing,
} from '../support/unit-spec';
import { value } from '../support/judging';

/**
 * Goal: what is said of a section does not hang on the order in which independent work was told; no label goes on over
 * what is not proven; another revision or another order changes what is required from here on, and nothing of what is
 * past. Method: random days at the real decider, against reckonings that read the events alone.
 */
const PLATE: UnitFacts['mounted'][number] = {
  station: 'rough-in',
  lot: { lot: 'P-1', kind: 'plate', usable: true, properties: [inches('thickness', '0.07')] },
};

type Told = { readonly command: UnitCommand; readonly by: typeof LEAD };

const after = (
  told: readonly Told[],
  start: readonly UnitEvent[] = onLine(),
): readonly RecordedUnitEvent[] => {
  const events = start.map((event, index) => standing(event, index + 1));
  for (const [index, { command, by }] of told.entries()) {
    const state = stateOf(events);
    const decision = SECTION.decide(command, state, {
      ...FACTS,
      signer: by,
      idBase: `k${String(index)}`,
      mounted: [PLATE],
    });
    if (!decision.ok) continue;
    for (const event of decision.events) events.push(standing(event, events.length + 1, { by }));
  }
  return events;
};
const stateOf = (events: readonly RecordedUnitEvent[]): Unit =>
  events.reduce(SECTION.evolve, SECTION.initial);

/** None of these needs, expects or hides another. */
const INDEPENDENT = ['framed', 'wired', 'plated', 'trussed'];
const anyEdge = fc.constantFrom('1.5', '1', '2.25');
const anyWork = fc
  .record({
    operation: fc.constantFrom(...INDEPENDENT),
    edge: anyEdge,
    plates: fc.constantFrom('0', '0', '1'),
    except: fc.constantFrom<readonly string[]>([], [], ['kitchen']),
  })
  .map(({ operation, edge, plates, except }): Told => {
    const values: readonly RecordedValue[] =
      operation === 'wired' ? [inches('edge', edge), count('plates', plates)] : [];
    return { command: recordWork(operation, { values, except }), by: LEAD };
  });
/** Each operation told once: telling one twice puts the second in place of the first, which is an order that counts. */
const anyMorning = fc.uniqueArray(anyWork, {
  selector: ({ command }) => ('operation' in command.data ? command.data.operation : ''),
  maxLength: 4,
});
const shuffled = (told: readonly Told[]): fc.Arbitrary<readonly Told[]> =>
  fc.shuffledSubarray([...told], { minLength: told.length, maxLength: told.length });

const verdicts = (events: readonly RecordedUnitEvent[]): readonly unknown[] => {
  const state = stateOf(events);
  return PLAN.order.map((operation) => {
    const decision = SECTION.decide(ask(operation), state, FACTS);
    const [answer] = decision.ok ? decision.events : [];
    const findings =
      answer?.type === 'AskingCleared' || answer?.type === 'AskingRefused' ? answer.data.findings : [];
    // Holds and defects are named after the command that opened them; what they say is what counts.
    return findings.map(({ hold: _hold, defect: _defect, ...said }) => JSON.stringify(said)).sort();
  });
};
const heldFor = (events: readonly RecordedUnitEvent[]): readonly string[] =>
  stateOf(events)
    .holds.map(({ reason, operation }) => `${reason} ${String(operation)}`)
    .sort();

describe('work that is independent', () => {
  it('is judged the same and held for the same, in whatever order it is told', () => {
    fc.assert(
      fc.property(
        anyMorning.chain((told) => fc.tuple(fc.constant(told), shuffled(told))),
        ([told, other]) => {
          const [one, two] = [after(told), after(other)];
          expect(verdicts(two)).toStrictEqual(verdicts(one));
          expect(heldFor(two)).toStrictEqual(heldFor(one));
        },
      ),
      { numRuns: 300 },
    );
  });
});

const anyTold: fc.Arbitrary<Told> = fc.oneof(
  { weight: 5, arbitrary: anyWork },
  {
    weight: 3,
    arbitrary: fc.constantFrom<Told>(
      { command: recordWork('looked'), by: INSPECTOR },
      { command: recordWork('boarded'), by: LEAD },
      { command: recordWork('roofed'), by: LEAD },
      {
        command: recordWork('tested', {
          instrument: null,
          values: [{ characteristic: 'pressure', value: '4', unit: '[psi]' }],
        }),
        by: INSPECTOR,
      },
    ),
  },
  {
    weight: 2,
    arbitrary: fc.nat(6).map((index): Told => ({
      command: {
        type: 'AffixLabel',
        data: { serial: SERIAL, number: `ABC00000${String(index)}`, photos: ['0'.repeat(64)] },
      },
      by: INSPECTOR,
    })),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(fc.nat(20), fc.nat(3)).map(([key, index]): Told => ({
      command: { type: 'ReleaseHold', data: { serial: SERIAL, hold: `k${String(key)}-${String(index)}` } },
      by: MANAGER,
    })),
  },
);

const openAt = (events: readonly RecordedUnitEvent[]): number => {
  const gone = new Set<string>();
  for (const event of events) {
    if (event.type === 'HoldReleased') gone.add(event.data.hold);
    if (event.type === 'DefectClosed') gone.add(event.data.defect);
  }
  return events.filter(
    (event) =>
      (event.type === 'HoldPlaced' && !gone.has(event.data.hold)) ||
      (event.type === 'DefectRecorded' && !gone.has(event.data.defect)),
  ).length;
};

describe('a label', () => {
  it('goes on over no hold, no defect and no second label, whatever the day was', () => {
    let affixed = 0;
    fc.assert(
      fc.property(fc.array(anyTold, { maxLength: 30 }), (told) => {
        const events = after(told);
        for (const [index, event] of events.entries()) {
          if (event.type !== 'LabelAffixed') continue;
          affixed += 1;
          const before = events.slice(0, index);
          expect(openAt(before)).toBe(0);
          expect(before.some(({ type }) => type === 'LabelAffixed')).toBe(false);
        }
      }),
      { numRuns: 300 },
    );
    expect(affixed).toBeGreaterThan(20);
  });
});

const anyOtherPlan: fc.Arbitrary<CompiledPlan> = fc
  .record({
    limit: fc.constantFrom('1', '1.25', '2', '3'),
    without: fc.subarray(['trussed', 'plated', 'tested']),
  })
  .map(({ limit, without }) => ({
    ...PLAN,
    revision: 2,
    digest: `other ${limit}`,
    order: PLAN.order.filter((id) => !without.includes(id)),
    operations: Object.fromEntries(
      Object.entries(PLAN.operations)
        .filter(([id]) => !without.includes(id))
        .map(([id, operation]) => [
          id,
          {
            ...operation,
            values: operation.values.map((one) =>
              one.characteristic === 'edge'
                ? value('edge', { test: { is: 'compare', op: '>=', number: limit }, required: `>= ${limit}` })
                : one,
            ),
          },
        ]),
    ),
  }));

describe('another revision', () => {
  it('changes nothing of what was told, and says of the past only what it would have said itself', () => {
    fc.assert(
      fc.property(fc.array(anyTold, { maxLength: 15 }), anyOtherPlan, (told, plan) => {
        const events = after(told);
        const before = stateOf(events);
        const nothing = { lot: () => null, instrument: () => null };
        const decision = SECTION.decide(
          { type: 'ApplyRevision', data: { serial: SERIAL, revision: 2 } },
          before,
          { ...FACTS, signer: MANAGER, applying: { plan, ...nothing } },
        );
        if (!decision.ok) throw new Error(decision.rejection.code);
        const applied = decision.events.map((event, index) => standing(event, events.length + index + 1));
        const now = stateOf([...events, ...applied]);

        const asTold = ({ work }: Unit) =>
          Object.entries(work).map(([id, { missing: _missing, ...done }]) => [id, done]);
        expect(asTold(now)).toStrictEqual(asTold(before));
        expect(now.evidence).toStrictEqual(before.evidence);
        expect(now.holds).toStrictEqual(expect.arrayContaining([...before.holds]));
        const said = changesUnder(before, { from: PLAN, to: plan }, before, nothing);
        expect(said.notDue.every((id) => plan.operations[id] === undefined)).toBe(true);
        for (const { operation, characteristic, recorded } of said.findings) {
          if (characteristic !== 'edge') continue;
          expect(before.work[operation]?.values.map((one) => one.value)).toContain(recorded);
        }
      }),
      { numRuns: 300 },
    );
  });
});
