import type { Signer } from '@libs/judge';
import type { UnitCommand, UnitEvent } from '@libs/record';
import {
  LEAD,
  MANAGER,
  PLAN,
  SERIAL,
  finding,
  given,
  givenBy,
  onLine,
  opened,
  placed,
  stateAfter,
  worked,
  told,
} from '../support/unit-spec';
import type { Data } from '../support/unit-told';

const AGENCY: Signer = { actor: 'agency', crew: null, roles: ['agency-inspector'] };

const LOOSE = finding('value-out-of-limits', 'wired', { class: 'nonconformance' });
const defect: UnitEvent = opened('d-1', LOOSE, 'final', 'electrical');
const punch = (id: string, quantity: number): UnitEvent => ({
  type: 'DefectRecorded',
  data: {
    serial: SERIAL,
    defect: id,
    class: 'punch',
    component: 'outlet',
    symptom: 'loose',
    place: null,
    foundAt: 'final',
    operation: 'wired',
    charged: 'rough-in',
    photos: [],
    quantity,
  },
});

describe('the cause of a defect', () => {
  const revise = told('ReviseCause', { defect: 'd-1', operation: 'plated', note: 'sealed' });

  it('is changed by the quality manager with a reason, and another station is charged', () => {
    given(...onLine(), defect)
      .when(revise, { signer: MANAGER })
      .records({
        type: 'CauseRevised',
        data: {
          serial: SERIAL,
          defect: 'd-1',
          from: 'wired',
          operation: 'plated',
          charged: PLAN.operations['plated']?.station ?? null,
          note: 'sealed',
        },
      });
  });

  it('is nobody else’s to change', () => {
    given(...onLine(), defect)
      .when(revise, { signer: LEAD })
      .isRejectedAs('not-allowed');
    given(...onLine(), defect)
      .when(revise, { signer: AGENCY })
      .isRejectedAs('not-allowed');
  });

  it('may change once the defect is over, and never for one that was not', () => {
    const over: UnitEvent = {
      type: 'DefectClosed',
      data: { serial: SERIAL, defect: 'd-1', how: 'withdrawn' },
    };
    given(...onLine(), defect, over)
      .when(revise, { signer: MANAGER })
      .recordsTypes('CauseRevised');
    given(...onLine())
      .when(revise, { signer: MANAGER })
      .isRejectedAs('defect-unknown');
  });
});

describe('a touch-up list', () => {
  it('of two dozen items closes with one signature', () => {
    given(...onLine('final'), punch('p-1', 20), punch('p-2', 4), defect)
      .when(told('SignPunchList', { defects: [] }))
      .records(
        { type: 'PunchListSigned', data: { serial: SERIAL, defects: ['p-1', 'p-2'], items: 24 } },
        { type: 'DefectClosed', data: { serial: SERIAL, defect: 'p-1', how: 'signed' } },
        { type: 'DefectClosed', data: { serial: SERIAL, defect: 'p-2', how: 'signed' } },
      );
  });

  it('signs what is done of it, and no nonconformance with it', () => {
    const history = [...onLine('final'), punch('p-1', 20), punch('p-2', 4), defect];
    given(...history)
      .when(told('SignPunchList', { defects: ['p-2'] }))
      .recordsTypes('PunchListSigned', 'DefectClosed');
    given(...history)
      .when(told('SignPunchList', { defects: ['p-2', 'd-1'] }))
      .isRejectedAs('disposition-needed');
    given(...onLine('final'))
      .when(told('SignPunchList', { defects: [] }))
      .isRejectedAs('punch-list-empty');
  });

  it('is recorded in one go, each item under a name of its own', () => {
    const item = { component: 'outlet', symptom: 'loose', place: null, quantity: 1 };
    const ids = given(...onLine('final'))
      .when(told('RecordPunchList', { foundAt: 'final', items: [item, item, item] }))
      .events()
      .map((event) => (event.type === 'DefectRecorded' ? event.data.defect : ''));
    expect(ids).toStrictEqual(['key-0', 'key-1', 'key-2']);
  });
});

describe('a disposition', () => {
  const decide = (change: Partial<Data<'DispositionDefect'>>): UnitCommand =>
    told('DispositionDefect', { defect: 'd-1', disposition: 'rework', detail: null, ...change });

  it('is the quality manager’s, and only a nonconformance has one', () => {
    given(...onLine(), defect)
      .when(decide({}), { signer: LEAD })
      .isRejectedAs('not-allowed');
    given(...onLine(), punch('d-1', 3))
      .when(decide({}), { signer: MANAGER })
      .isRejectedAs('disposition-not-needed');
    given(...onLine(), defect)
      .when(decide({}), { signer: MANAGER })
      .recordsTypes('DefectDispositioned');
  });

  it('to repair names the approved detail', () => {
    const repair = decide({ disposition: 'repair' });
    given(...onLine(), defect)
      .when(repair, { signer: MANAGER })
      .isRejectedAs('detail-needed');
    given(...onLine(), defect)
      .when(decide({ disposition: 'repair', detail: 'RD-4' }), { signer: MANAGER })
      .recordsTypes('DefectDispositioned');
  });

  it('to use as is needs a named approval, closes the defect, and lets go what it held', () => {
    const asIs = decide({ disposition: 'use-as-is' });
    given(...onLine(), defect)
      .when(asIs, { signer: MANAGER })
      .isRejectedAs('approval-needed');
    given(...onLine(), defect, placed('h-1', LOOSE, 'd-1'))
      .when(decide({ disposition: 'use-as-is', approval: 'sealed' }), { signer: MANAGER })
      .recordsTypes('DefectDispositioned', 'DefectClosed', 'HoldReleased');
  });

  it('to use as is is not for whoever did the work', () => {
    givenBy(
      [onLine()[0] as UnitEvent, {}],
      [onLine()[1] as UnitEvent, {}],
      [worked('wired'), { by: MANAGER }],
      [defect, {}],
    )
      .when(decide({ disposition: 'use-as-is', approval: 'sealed' }), { signer: MANAGER })
      .isRejectedAs('verified-by-own-hand');
  });

  it('leaves rework to be done and looked at by somebody else', () => {
    const scrapped: UnitEvent = {
      type: 'DefectDispositioned',
      data: { serial: SERIAL, defect: 'd-1', disposition: 'scrap', detail: null },
    };
    expect(stateAfter([...onLine(), defect, scrapped]).defects).toMatchObject([
      { defect: 'd-1', state: 'open', disposition: 'scrap' },
    ]);
  });
});
