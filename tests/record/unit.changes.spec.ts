import type { CompiledPlan, Deviation, Finding } from '@libs/judge';
import type { UnitCommand } from '@libs/record';
import {
  MANAGER,
  PLAN,
  SERIAL,
  given,
  inches,
  count,
  onLine,
  opened,
  ordered,
  placed,
  finding,
  stateAfter,
  worked,
} from '../support/unit-spec';
import { operation, planOfOperations, requires, value } from '../support/judging';

/** The plan of another design: wire further from the edge, a sheathing that is new, a truss that is gone. */
const CHANGED: CompiledPlan = {
  ...planOfOperations(
    ...Object.values(PLAN.operations)
      .filter(({ id }) => id !== 'trussed')
      .map((one) =>
        one.id === 'wired'
          ? { ...one, values: one.values.map((each) => (each.characteristic === 'edge' ? WIDER() : each)) }
          : one,
      ),
    operation('sheathed', { station: 'roof-set', requires: requires('roofed') }),
  ),
  digest: 'changed',
};
function WIDER() {
  return value('edge', { test: { is: 'compare', op: '>=', number: '2' }, required: '>= 2' });
}
const nothing = { lot: () => null, instrument: () => null };
const applying = { plan: CHANGED, ...nothing };
const WIRED = worked('wired', { values: [inches('edge', '1.5'), count('plates', '0')] });

describe('an order that changes in mid-line', () => {
  const change = (design = { wind: 'II' }): UnitCommand => ({
    type: 'ChangeOrder',
    data: { serial: SERIAL, design },
  });

  it('tells what is now due, what no longer is, what is asked differently and what is newly wrong', () => {
    const [event] = given(...onLine(), WIRED, worked('trussed'))
      .when(change(), { applying, signer: MANAGER })
      .events();
    expect(event).toMatchObject({
      type: 'OrderChanged',
      planDigest: 'changed',
      data: {
        design: { wind: 'II' },
        due: ['sheathed'],
        notDue: ['trussed'],
        changed: [{ operation: 'wired', characteristic: 'edge', before: '>= 1.25', after: '>= 2' }],
        findings: [{ rule: 'value-out-of-limits', operation: 'wired', recorded: '1.5' }],
      },
    });
  });

  it('holds what is newly wrong, with a defect of its own', () => {
    given(...onLine(), WIRED)
      .when(change(), { applying, signer: MANAGER })
      .recordsTypes('OrderChanged', 'DefectRecorded', 'HoldPlaced');
  });

  it('keeps all that was told: work the new order does not ask for stays on record', () => {
    const history = [...onLine(), WIRED, worked('trussed')];
    const [event] = given(...history)
      .when(change(), { applying, signer: MANAGER })
      .events();
    const after = stateAfter([...history, ...(event === undefined ? [] : [event])]);
    expect(Object.keys(after.work)).toStrictEqual(['wired', 'trussed']);
    expect(after.design).toStrictEqual({ wind: 'II' });
  });

  it('is simply another order before the section is on the line', () => {
    given(ordered())
      .when(change(), { plan: null, signer: MANAGER })
      .records({
        type: 'OrderChanged',
        data: { serial: SERIAL, design: { wind: 'II' }, due: [], notDue: [], changed: [], findings: [] },
      });
  });

  it('records nothing where nothing changes, and is no affair of a lead', () => {
    given(...onLine())
      .when(change({} as { wind: string }), { applying, signer: MANAGER })
      .recordsNothing();
    given(...onLine())
      .when(change(), { applying })
      .isRejectedAs('not-allowed');
  });
});

describe('a deviation approved for one home', () => {
  const deviation: Deviation = {
    deviation: 'd-1',
    operation: 'wired',
    reference: 'letter 26-118',
    allows: {
      what: 'value',
      characteristic: 'edge',
      required: '>= 1',
      test: { is: 'compare', op: '>=', number: '1' },
    },
  };
  const approve = (change: Partial<Deviation> = {}): UnitCommand => ({
    type: 'ApproveDeviation',
    data: { serial: SERIAL, deviation: { ...deviation, ...change } },
  });
  const NEARER = {
    ...PLAN,
    operations: {
      ...PLAN.operations,
      wired: operation('wired', {
        entry: 'V',
        values: [value('edge', { test: { is: 'compare', op: '>=', number: '1' }, required: '>= 1' })],
      }),
    },
  };
  const facts = { applying: { plan: NEARER, ...nothing }, signer: MANAGER };
  const near: Finding = finding('value-out-of-limits', 'wired', {
    class: 'nonconformance',
    characteristic: 'edge',
    required: '>= 1.25',
    recorded: '1.1',
  });
  const history = [
    ...onLine(),
    worked('wired', { values: [inches('edge', '1.1'), count('plates', '0')], findings: [near] }),
    opened('d-near', near, 'floor'),
    placed('h-near', near, 'd-near'),
  ];

  it('closes the defect that was one only by the plan as it was, and releases its hold', () => {
    given(...history)
      .when(approve(), facts)
      .recordsTypes('DeviationApproved', 'DefectClosed', 'HoldReleased');
  });

  it('leaves a defect alone that it does not allow', () => {
    given(...history)
      .when(approve(), { ...facts, applying: { plan: PLAN, ...nothing } })
      .recordsTypes('DeviationApproved');
  });

  it('is of a characteristic its operation has, and approved by the quality manager', () => {
    given(...history)
      .when(approve({ allows: { ...deviation.allows, characteristic: 'colour' } as never }), facts)
      .isRejectedAs('characteristic-unknown');
    given(...history)
      .when(approve({ operation: 'painted' }), facts)
      .isRejectedAs('operation-unknown');
    given(...history)
      .when(approve(), { applying: facts.applying })
      .isRejectedAs('not-allowed');
  });
});

describe('a home bound for a county outside its zones', () => {
  const outside: Finding = {
    rule: 'destination-outside-zones',
    grade: 'hold',
    class: 'record',
    operation: '',
    station: null,
    characteristic: 'wind',
    required: 'III',
    recorded: 'I',
    places: ['Gullmere'],
    source: { kind: 'design', reference: 'counties.csv', row: 'counties.csv:2' },
  };
  const start: UnitCommand = { type: 'StartSection', data: { serial: SERIAL, at: 'floor' } };
  const mind: UnitCommand = { type: 'MindDestination', data: { serial: SERIAL } };

  it('is held from the day it starts, whole: no operation is at fault', () => {
    const [, hold] = given(ordered())
      .when(start, { outsideZones: [outside] })
      .events();
    expect(hold).toMatchObject({
      type: 'HoldPlaced',
      data: { reason: 'destination-outside-zones', operation: null, characteristic: 'wind', defect: null },
    });
  });

  it('is held once for a county, and let go when it is bound elsewhere', () => {
    const held = [...onLine(), placed('h-zone', outside)];
    given(...held)
      .when(mind, { outsideZones: [outside] })
      .recordsNothing();
    given(...held)
      .when(mind, { outsideZones: [] })
      .recordsTypes('HoldReleased');
    given(...held)
      .when(mind, { outsideZones: [{ ...outside, places: ['Sandreach'] }] })
      .recordsTypes('HoldReleased', 'HoldPlaced');
  });
});

describe('a lot that is quarantined after it was built in', () => {
  const command = (type: 'HoldForLot' | 'FreeFromLot', lot = 'L-7'): UnitCommand => ({
    type,
    data: { serial: SERIAL, lot },
  });
  const built = [...onLine(), worked('plated', { lots: ['L-7'] }), worked('wired', { lots: ['L-8'] })];

  it('holds every operation that used it, and no other', () => {
    const events = given(...built)
      .when(command('HoldForLot'))
      .events();
    expect(events).toMatchObject([
      { type: 'HoldPlaced', data: { reason: 'lot-not-usable', operation: 'plated', defect: null } },
    ]);
  });

  it('holds once, and lets go when the lot is found good after all', () => {
    const [hold] = given(...built)
      .when(command('HoldForLot'))
      .events();
    const held = [...built, ...(hold === undefined ? [] : [hold])];
    given(...held)
      .when(command('HoldForLot'))
      .recordsNothing();
    given(...held)
      .when(command('FreeFromLot'))
      .recordsTypes('HoldReleased');
    given(...held)
      .when(command('FreeFromLot', 'L-8'))
      .recordsNothing();
  });
});
