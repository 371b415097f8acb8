import {
  INSPECTOR,
  JUDGED_BY_PLAN,
  LEAD,
  WIRED_WELL,
  given,
  givenBy,
  onLine,
  recordWork,
  started,
  ordered,
  workData,
  worked,
} from '../support/unit-spec';

const wired = worked('wired', { values: WIRED_WELL });
const plated = worked('plated');

describe('a test', () => {
  const gauge = { instrument: 'G-1', kind: 'gauge', usable: true, properties: [] };
  const pressure = (number: string) => ({ characteristic: 'pressure', value: number, unit: '[psi]' });

  it('is passed when there is nothing to say of it', () => {
    given(...onLine())
      .when(recordWork('tested', { values: [pressure('3')], instrument: 'G-1' }), {
        instrument: gauge,
        signer: INSPECTOR,
      })
      .records({
        type: 'TestRecorded',
        data: {
          ...workData('tested', { values: [pressure('3')], instrument: 'G-1', crew: 'quality' }),
          passed: true,
        },
        ...JUDGED_BY_PLAN,
      });
  });

  it('that failed is recorded as failed, and holds the section', () => {
    const [test, ...rest] = given(...onLine())
      .when(recordWork('tested', { values: [pressure('2.9')], instrument: 'G-1' }), {
        instrument: gauge,
        signer: INSPECTOR,
      })
      .events();
    expect(test).toMatchObject({ type: 'TestRecorded', data: { passed: false } });
    expect(rest.map(({ type }) => type)).toStrictEqual(['DefectRecorded', 'HoldPlaced']);
  });

  it('takes nothing over from the test before it', () => {
    const before = {
      type: 'TestRecorded',
      data: { ...workData('tested', { values: [], missing: ['pressure'] }), passed: false },
      ...JUDGED_BY_PLAN,
    } as const;
    const [test] = given(...onLine(), before)
      .when(recordWork('tested', { values: [], instrument: 'G-1' }), { instrument: gauge, signer: INSPECTOR })
      .events();
    expect(test).toMatchObject({ data: { missing: ['pressure'], passed: false } });
  });
});

describe('an inspection', () => {
  it('holds the section when whoever signs did the work looked at', () => {
    const ownWork = { ...INSPECTOR, actor: 'lead' };
    const [, ...rest] = givenBy([ordered(), {}], [started(), {}], [wired, { by: LEAD }])
      .when(recordWork('looked'), { signer: ownWork })
      .events();
    expect(rest).toMatchObject([{ type: 'HoldPlaced', data: { reason: 'signed-by-own-crew' } }]);
  });

  it('holds nothing when someone else signs', () => {
    given(...onLine(), wired, plated)
      .when(recordWork('looked'), { signer: INSPECTOR })
      .recordsTypes('WorkRecorded');
  });
});
