import type { UnitCommand, UnitEvent, UnitFacts } from '@libs/record';
import type { RecordedValue } from '@libs/judge';
import {
  INSPECTOR,
  SERIAL,
  ask,
  correct,
  count,
  given,
  inches,
  onLine,
  ordered,
  recordWork,
  withdraw,
  worked,
} from '../support/unit-spec';

const wrong = (value: Partial<RecordedValue>): readonly RecordedValue[] => [
  { ...inches('edge', '1.5'), ...value },
];

/** Each command is wrong in two ways or more; the first in the list of rejections is the answer. */
const PRECEDENCE: readonly (readonly [
  string,
  readonly UnitEvent[],
  UnitCommand,
  string,
  Partial<UnitFacts>,
])[] = [
  ['an unknown serial, an unknown operation', [], recordWork('gilded'), 'section-unknown', {}],
  [
    'not started, an unknown operation',
    [ordered()],
    recordWork('gilded'),
    'section-not-on-line',
    { plan: null },
  ],
  [
    'an unknown operation, an unknown place',
    onLine(),
    recordWork('gilded', { except: ['attic'] }),
    'operation-unknown',
    {},
  ],
  [
    'an operation of the home, an unknown place',
    onLine(),
    recordWork('joined', { except: ['attic'] }),
    'operation-of-other-unit',
    {},
  ],
  [
    'an unknown place, an unknown characteristic',
    onLine(),
    recordWork('wired', { except: ['attic'], values: [inches('depth', '1')] }),
    'place-unknown',
    {},
  ],
  [
    'a value at an unknown place, of an unknown characteristic',
    onLine(),
    recordWork('wired', { values: [{ ...inches('depth', '1'), place: 'attic' }] }),
    'place-unknown',
    {},
  ],
  [
    'an unknown characteristic, an unknown lot',
    onLine(),
    recordWork('wired', { values: [inches('depth', '1')], lots: ['L-9'] }),
    'characteristic-unknown',
    {},
  ],
  [
    'no number, in an unknown unit',
    onLine(),
    recordWork('wired', { values: wrong({ value: 'about 2', unit: 'cubit' }) }),
    'value-not-a-number',
    {},
  ],
  [
    'an unknown unit, an unknown lot',
    onLine(),
    recordWork('wired', { values: wrong({ unit: 'cubit' }), lots: ['L-9'] }),
    'unit-unknown',
    {},
  ],
  [
    'an unknown lot, an unknown instrument',
    onLine(),
    recordWork('wired', { lots: ['L-9'], instrument: 'G-9' }),
    'lot-unknown',
    {},
  ],
  [
    'an unknown instrument, a proof that is not theirs',
    onLine(),
    recordWork('wired', { instrument: 'G-9', proof: 'reconstructed' }),
    'instrument-unknown',
    {},
  ],
  [
    'an unknown operation asked for at an unknown place',
    onLine(),
    ask('gilded', ['attic']),
    'operation-unknown',
    {},
  ],
  ['an unknown place asked for', onLine(), ask('boarded', ['attic']), 'place-unknown', {}],
  ['an unknown serial asked for', [], ask('gilded'), 'section-unknown', {}],
  ['nothing to withdraw, on an unknown serial', [], withdraw('wired'), 'section-unknown', {}],
  ['nothing to withdraw, towards its own serial', onLine(), withdraw('wired', SERIAL), 'same-serial', {}],
  [
    'nothing to correct, with an unknown characteristic',
    onLine(),
    correct('wired', [inches('depth', '1')]),
    'characteristic-unknown',
    {},
  ],
];

describe('where several reasons speak against an entry', () => {
  it.each([...PRECEDENCE])('%s', (...[, history, command, code, facts]) => {
    given(...history)
      .when(command, facts)
      .isRejectedAs(code);
  });
});

describe('values', () => {
  it.each([
    ['a number in an unknown unit', wrong({ unit: 'cubit' }), 'unit-unknown'],
    ['a number in a unit of another kind', wrong({ unit: '[psi]' }), 'unit-of-other-kind'],
    ['a measure without a unit', wrong({ unit: null }), 'unit-of-other-kind'],
    ['a number with a comma', wrong({ value: '1,5' }), 'value-not-a-number'],
    ['a number in floating notation', wrong({ value: '1e3' }), 'value-not-a-number'],
    ['half a count', [count('plates', '0.5')], 'value-not-a-count'],
    ['a count below none', [count('plates', '-5')], 'value-not-a-count'],
    ['a length below none', wrong({ value: '-3' }), 'value-below-zero'],
  ])('%s cannot be of this operation', (_, values, code) => {
    given(...onLine())
      .when(recordWork('wired', { values }))
      .isRejectedAs(code);
  });

  it('in another unit of the same kind are taken, and judged in it', () => {
    const values = [{ characteristic: 'edge', value: '30', unit: 'mm' }, count('plates', '0')];
    const [event] = given(...onLine())
      .when(recordWork('wired', { values }))
      .events();
    expect(event).toMatchObject({
      data: { values, findings: [{ rule: 'value-out-of-limits', recorded: '30' }] },
    });
  });

  it('of a lot are never typed', () => {
    given(...onLine())
      .when(recordWork('plated', { values: [inches('thickness', '0.07')] }))
      .isRejectedAs('characteristic-not-entered');
  });

  it('out of their limits are taken: refusing a fact would make the record false', () => {
    given(...onLine())
      .when(recordWork('wired', { values: [inches('edge', '0'), count('plates', '7')] }))
      .recordsTypes('WorkRecorded', 'DefectRecorded', 'HoldPlaced', 'DefectRecorded', 'HoldPlaced');
  });
});

describe('an operation the design does not have', () => {
  it('told as done goes on record, and holds the section', () => {
    given(...onLine(), worked('framed'))
      .when(recordWork('sheathed'))
      .recordsTypes('WorkRecorded', 'HoldPlaced');
  });

  it('asked for is refused', () => {
    given(...onLine())
      .when(ask('sheathed'), { signer: INSPECTOR })
      .recordsTypes('AskingRefused');
  });
});
