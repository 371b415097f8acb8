import type { UnitCommand, UnitEvent } from '@libs/record';
import {
  INSPECTOR,
  LEAD,
  MANAGER,
  SERIAL,
  finding,
  given,
  givenBy,
  onLine,
  opened,
  ordered,
  placed,
  released,
  started,
  stateAfter,
  worked,
} from '../support/unit-spec';

const TOO_NEAR = finding('value-out-of-limits', 'wired', { class: 'nonconformance', characteristic: 'edge' });

type Defect = Extract<UnitCommand, { readonly type: 'RecordDefect' }>['data'];
const recordDefect = (change: Partial<Defect> = {}): UnitCommand => ({
  type: 'RecordDefect',
  data: {
    serial: SERIAL,
    defect: 'key-0',
    class: 'nonconformance',
    component: 'outlet',
    symptom: 'loose',
    place: 'kitchen',
    foundAt: 'final',
    operation: 'wired',
    photos: [],
    quantity: 1,
    hold: false,
    ...change,
  },
});

const defectRecorded = (change: object = {}): UnitEvent => ({
  type: 'DefectRecorded',
  data: {
    serial: SERIAL,
    defect: 'key-0',
    class: 'nonconformance',
    component: 'outlet',
    symptom: 'loose',
    place: 'kitchen',
    foundAt: 'final',
    operation: 'wired',
    photos: [],
    quantity: 1,
    charged: 'rough-in',
    ...change,
  },
});

const rework: UnitCommand = {
  type: 'RecordRework',
  data: { serial: SERIAL, defect: 'd', crew: 'electrical' },
};
const reworked: UnitEvent = { type: 'ReworkDone', data: { serial: SERIAL, defect: 'd', crew: 'electrical' } };
const verify = (accepted: boolean): UnitCommand => ({
  type: 'VerifyDefect',
  data: { serial: SERIAL, defect: 'd', accepted },
});
const verified = (accepted: boolean): UnitEvent => ({
  type: 'DefectVerified',
  data: { serial: SERIAL, defect: 'd', accepted },
});
const close = (how: 'fitted' | 'signed' | 'withdrawn', defect = 'd'): UnitCommand => ({
  type: 'CloseDefect',
  data: { serial: SERIAL, defect, how },
});
const closed = (how: 'fitted' | 'signed' | 'withdrawn'): UnitEvent => ({
  type: 'DefectClosed',
  data: { serial: SERIAL, defect: 'd', how },
});

const WITH_DEFECT = [...onLine(), opened('d', TOO_NEAR, 'floor'), placed('h', TOO_NEAR, 'd')];

describe('a defect', () => {
  it('is charged to the station of the operation that caused it, with the crew that did it', () => {
    given(...onLine('final'), worked('wired', { crew: 'electrical' }))
      .when(recordDefect())
      .records(defectRecorded({ madeBy: 'electrical' }));
  });

  it('is charged as the fault map proposes when nobody names an operation', () => {
    const [event] = given(...onLine('final'))
      .when(recordDefect({ operation: null }))
      .events();
    expect(event?.data).toMatchObject({ operation: 'wired', charged: 'rough-in' });
  });

  it('holds the section when whoever finds it says so', () => {
    given(...onLine('final'))
      .when(recordDefect({ hold: true }))
      .records(defectRecorded(), {
        type: 'HoldPlaced',
        data: {
          serial: SERIAL,
          hold: 'key-1',
          reason: 'defect-open',
          operation: 'wired',
          characteristic: null,
          defect: 'key-0',
        },
      });
  });

  it.each([
    ['component-unknown', { component: 'chandelier' }],
    ['symptom-unknown', { symptom: 'haunted' }],
    ['place-unknown', { place: 'cellar' }],
    ['station-unknown', { foundAt: 'moon' }],
    ['operation-unknown', { operation: 'gilded' }],
  ] as const)('is rejected as %s for a code nobody knows', (code, change) => {
    given(...onLine())
      .when(recordDefect(change))
      .isRejectedAs(code);
  });
});

describe('the way out of a nonconformance', () => {
  it('begins with rework', () => {
    given(...WITH_DEFECT)
      .when(rework)
      .records(reworked);
  });

  it('ends with verification by someone else, which frees the hold', () => {
    given(...WITH_DEFECT, reworked)
      .when(verify(true), { signer: INSPECTOR })
      .records(verified(true), released('h', 'verified'));
  });

  it('is not verified by whoever did the rework', () => {
    givenBy([ordered(), {}], [started(), {}], [opened('d', TOO_NEAR, 'floor'), {}], [reworked, { by: LEAD }])
      .when(verify(true), { signer: LEAD })
      .isRejectedAs('verified-by-own-hand');
  });

  it('is not verified before there is rework', () => {
    given(...WITH_DEFECT)
      .when(verify(true), { signer: INSPECTOR })
      .isRejectedAs('rework-not-done');
  });

  it('starts anew when the rework is not accepted', () => {
    given(...WITH_DEFECT, reworked)
      .when(verify(false), { signer: INSPECTOR })
      .records(verified(false));
    given(...WITH_DEFECT, reworked, verified(false))
      .when(verify(true), { signer: INSPECTOR })
      .isRejectedAs('rework-not-done');
  });

  it('does not lead past rework by closing it', () => {
    given(...WITH_DEFECT)
      .when(close('signed'), { signer: MANAGER })
      .isRejectedAs('disposition-needed');
  });

  it('is over once: what is closed is told from what nobody knows', () => {
    const over = [...WITH_DEFECT, reworked, verified(true), released('h', 'verified')];
    given(...over)
      .when(rework)
      .isRejectedAs('defect-already-closed');
    given(...onLine())
      .when(rework)
      .isRejectedAs('defect-unknown');
  });
});

describe('closing', () => {
  const shortage = [...onLine(), defectRecorded({ defect: 'd', class: 'shortage' })];

  it('of a shortage says that the part was fitted', () => {
    given(...shortage)
      .when(close('fitted'))
      .records(closed('fitted'));
  });

  it('of a mistaken record takes the quality manager or an inspector', () => {
    given(...shortage)
      .when(close('withdrawn'))
      .isRejectedAs('not-allowed');
    given(...shortage)
      .when(close('withdrawn'), { signer: MANAGER })
      .records(closed('withdrawn'));
  });
});

const hold: UnitCommand = {
  type: 'PlaceHold',
  data: { serial: SERIAL, hold: 'key-0', reason: 'look-again', operation: null },
};
const held: UnitEvent = {
  type: 'HoldPlaced',
  data: {
    serial: SERIAL,
    hold: 'key-0',
    reason: 'look-again',
    operation: null,
    characteristic: null,
    defect: null,
  },
};
const release = (id: string): UnitCommand => ({ type: 'ReleaseHold', data: { serial: SERIAL, hold: id } });

describe('a hold', () => {
  it('may be placed by anyone, for the plant’s own reason', () => {
    given(...onLine())
      .when(hold)
      .records(held);
  });

  it('is released only by a role that may decide', () => {
    given(...onLine(), held)
      .when(release('key-0'))
      .isRejectedAs('not-allowed');
    given(...onLine(), held)
      .when(release('key-0'), { signer: INSPECTOR })
      .records(released('key-0', 'decided'));
  });

  it('is not made good by work: a person placed it, a person releases it', () => {
    const onWired: UnitEvent = { ...held, data: { ...held.data, operation: 'wired' } };
    const state = stateAfter([...onLine(), onWired, worked('wired')]);
    expect(state.holds.map(({ hold: id }) => id)).toStrictEqual(['key-0']);
  });

  it('released once is not released again', () => {
    given(...onLine(), held, released('key-0', 'decided'))
      .when(release('key-0'), { signer: MANAGER })
      .isRejectedAs('hold-already-released');
    given(...onLine())
      .when(release('key-9'), { signer: MANAGER })
      .isRejectedAs('hold-unknown');
  });

  it('is rejected for a reason the plant does not have', () => {
    given(...onLine())
      .when({ ...hold, data: { ...hold.data, reason: 'bad-mood' } })
      .isRejectedAs('reason-unknown');
  });
});
