import fc from 'fast-check';
import type { Signer } from '@libs/judge';
import { SECTION } from '@libs/record';
import type { RecordedUnitEvent, Unit, UnitCommand, UnitEvent } from '@libs/record';
import {
  CODES,
  FACTS,
  INSPECTOR,
  LEAD,
  MANAGER,
  PLAN,
  SERIAL,
  ask,
  correct,
  count,
  inches,
  onLine,
  recordWork,
  standing,
  withdraw,
} from './unit-spec';

/** Days of random commands, played against the real decider. */

const PLATE = {
  station: 'rough-in',
  lot: { lot: 'P-1', kind: 'plate', usable: true, properties: [inches('thickness', '0.07')] },
};

export type Step = { readonly command: UnitCommand; readonly by: Signer };
type Day = {
  readonly events: readonly RecordedUnitEvent[];
  readonly state: Unit;
};

export const SIGNERS = [LEAD, INSPECTOR, MANAGER];
const PLACES = [[], ['kitchen'], ['kitchen', 'bath']] as const;
const OPERATIONS = PLAN.order.filter((id) => PLAN.operations[id]?.scope === 'section');

const anyValues = fc.record({
  edge: fc.constantFrom('1.5', '1.25', '2', '3', '1', null),
  plates: fc.constantFrom('0', '0', '0', '0', '2', null),
});
const anyExcept = fc.constantFrom<readonly string[]>([], [], [], ...PLACES);
/** Mostly of the cover and what it hides: that is where things can go wrong. */
const anyOperation = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom('wired', 'plated', 'looked', 'boarded') },
  { weight: 1, arbitrary: fc.constantFrom(...OPERATIONS) },
);
const valuesOf = ({ edge, plates }: { edge: string | null; plates: string | null }) => [
  ...(edge === null ? [] : [inches('edge', edge)]),
  ...(plates === null ? [] : [count('plates', plates)]),
];

export const anyWork = fc
  .record({
    operation: anyOperation,
    except: anyExcept,
    values: anyValues,
    proof: fc.constantFrom('signed', 'seen'),
  })
  .map(({ operation, except, values, proof }) =>
    recordWork(operation, { except, proof, values: operation === 'wired' ? valuesOf(values) : [] }),
  );
const anyAsking = fc
  .record({ operation: fc.oneof(fc.constant('boarded'), anyOperation), except: anyExcept })
  .map(({ operation, except }) => ask(operation, except));
const anyMending = fc.oneof(
  anyOperation.map((operation) => withdraw(operation)),
  anyValues.map((values) => correct('wired', valuesOf(values))),
);
const anySignOff = fc
  .constantFrom('floor', 'rough-in', 'roof-shop', 'drywall')
  .map((station): UnitCommand => ({
    type: 'SignOffStation',
    data: { serial: SERIAL, station, except: [], values: [], photos: [], crew: null },
  }));
/** Ids are the machine's: the ninth command of a day opens `k9-1` and the like, so some of these hit. */
const anyId = fc.tuple(fc.nat(40), fc.nat(6)).map(([key, index]) => `k${String(key)}-${String(index)}`);
const anyTrouble = anyId.chain((id) =>
  fc.constantFrom<UnitCommand>(
    { type: 'RecordRework', data: { serial: SERIAL, defect: id, crew: null } },
    { type: 'VerifyDefect', data: { serial: SERIAL, defect: id, accepted: true } },
    { type: 'VerifyDefect', data: { serial: SERIAL, defect: id, accepted: false } },
    { type: 'CloseDefect', data: { serial: SERIAL, defect: id, how: 'withdrawn' } },
    { type: 'ReleaseHold', data: { serial: SERIAL, hold: id } },
    {
      type: 'PlaceHold',
      data: { serial: SERIAL, hold: `by-hand-${id}`, reason: 'look-again', operation: null },
    },
  ),
);
const anyMove = fc
  .constantFrom('floor', 'rough-in', 'roof-set', 'drywall', 'final')
  .map((to): UnitCommand => ({ type: 'MoveSection', data: { serial: SERIAL, to } }));

const anyStep: fc.Arbitrary<Step> = fc.record({
  command: fc.oneof(
    { weight: 6, arbitrary: anyWork },
    { weight: 4, arbitrary: anyAsking },
    { weight: 2, arbitrary: anyMending },
    { weight: 1, arbitrary: anySignOff },
    { weight: 4, arbitrary: anyTrouble },
    { weight: 1, arbitrary: anyMove },
  ),
  by: fc.constantFrom(...SIGNERS),
});
/** What a good shift does first, or some of it: else no cover would ever be cleared. */
const GOOD_STEPS: readonly Step[] = [
  { command: recordWork('wired'), by: LEAD },
  { command: recordWork('plated'), by: LEAD },
  { command: recordWork('looked'), by: INSPECTOR },
];
export const anyDay = fc
  .tuple(fc.subarray([...GOOD_STEPS]), fc.array(anyStep, { maxLength: 40 }))
  .map(([good, steps]) => [...good, ...steps]);

const begun = (): Day => after({ events: [], state: SECTION.initial }, onLine(), LEAD);

export const after = (day: Day, events: readonly UnitEvent[], by: Signer): Day => {
  const stood = events.map((event, index) => standing(event, day.events.length + index + 1, { by }));
  return { events: [...day.events, ...stood], state: stood.reduce(SECTION.evolve, day.state) };
};

export const decide = (day: Day, { command, by }: Step, index: number): ReturnType<typeof SECTION.decide> =>
  SECTION.decide(namedByKey(command, index), day.state, {
    ...FACTS,
    codes: CODES,
    signer: by,
    mounted: [PLATE],
    idBase: `k${String(index)}`,
  });

/** As the plant names a hold placed by hand: by the key it was sent under, which never comes twice. */
const namedByKey = (command: UnitCommand, index: number): UnitCommand =>
  command.type === 'PlaceHold'
    ? { ...command, data: { ...command.data, hold: `k${String(index)}-0` } }
    : command;

/** Plays a day, and hands every step over: what stood before, what was recorded. */
export const play = (
  steps: readonly Step[],
  look: (before: Day, step: Step, recorded: readonly UnitEvent[]) => void = () => undefined,
): Day =>
  steps.reduce<Day>((day, step, index) => {
    const decision = decide(day, step, index);
    const recorded = decision.ok ? decision.events : [];
    look(day, step, recorded);
    return after(day, recorded, step.by);
  }, begun());
