import type { Signer } from '@libs/judge';
import type { UnitEvent } from '@libs/record';
import { INSPECTOR, LEAD, MANAGER, SERIAL, given, onLine, stateAfter, told } from '../support/unit-spec';

const AGENCY: Signer = { actor: 'agency', crew: null, roles: ['agency-inspector'] };

describe('a red tag', () => {
  const place = told('PlaceRedTag', { tag: 'R-1', defect: null, rule: '3280.612(a)' });
  const lift = told('LiftRedTag', { tag: 'R-1' });
  const on: UnitEvent = {
    type: 'RedTagPlaced',
    data: { serial: SERIAL, tag: 'R-1', defect: null, rule: null },
  };
  const off: UnitEvent = { type: 'RedTagLifted', data: { serial: SERIAL, tag: 'R-1' } };

  // 24 CFR 3282.362(c)(1): only the IPIA or its agent removes a red tag.
  it('is placed and lifted by the inspection agency and by nobody else', () => {
    given(...onLine())
      .when(place, { signer: AGENCY })
      .recordsTypes('RedTagPlaced');
    for (const signer of [LEAD, INSPECTOR, MANAGER]) {
      given(...onLine())
        .when(place, { signer })
        .isRejectedAs('not-allowed');
      given(...onLine(), on)
        .when(lift, { signer })
        .isRejectedAs('not-allowed');
      given(...onLine(), on)
        .when(told('ReleaseHold', { hold: 'red-tag-R-1' }), { signer })
        .isRejectedAs('red-tag-needs-agency');
    }
    given(...onLine(), on)
      .when(lift, { signer: AGENCY })
      .recordsTypes('RedTagLifted');
  });

  it('is on once, and lifted once', () => {
    given(...onLine(), on)
      .when(place, { signer: AGENCY })
      .isRejectedAs('red-tag-on-already');
    given(...onLine())
      .when(lift, { signer: AGENCY })
      .isRejectedAs('red-tag-unknown');
    given(...onLine(), on, off)
      .when(lift, { signer: AGENCY })
      .isRejectedAs('hold-already-released');
  });

  it('holds the section like any hold, since when it was placed', () => {
    expect(stateAfter([...onLine(), on]).holds).toMatchObject([{ reason: 'red-tag', operation: null }]);
    expect(stateAfter([...onLine(), on, off]).holds).toStrictEqual([]);
  });
});
