import type { Decision, NewEvent, StreamKind } from '@libs/kernel';
import {
  INSTRUMENT,
  LABEL,
  LOT,
  PERSON,
  PLANT,
  RULEBOOK,
  STATION,
  inForceAt,
  isUsableInstrument,
  isUsableLot,
} from '@libs/record';

/** The commands one after another, each decided on what those before it led to. */
const told = <C, S, E extends NewEvent, R extends { readonly code: string }, F>(
  kind: StreamKind<C, S, E, R, F>,
  facts: F,
  ...commands: readonly C[]
): { readonly state: S; readonly last: Decision<E, R> } => {
  let state = kind.initial;
  let last: Decision<E, R> = { ok: true, events: [] };
  for (const command of commands) {
    last = kind.decide(command, state, facts);
    // Only type and data matter to these kinds.
    if (last.ok) for (const event of last.events) state = kind.evolve(state, event as never);
  }
  return { state, last };
};

const ANY = {
  stations: new Set<string>(),
  lotKinds: new Set<string>(),
  receivedAs: null,
  usable: true,
  reasons: new Set<string>(),
  actor: 'lead',
  roles: [],
};
const mount = (lot: string, kind = 'cable') =>
  ({ type: 'MountLot', data: { station: 'rough-in', lot, kind } }) as const;

describe('a station', () => {
  it('inherits the lot mounted last, of each kind, and says what it takes the place of', () => {
    const { last, state } = told(STATION, ANY, mount('C-1'), mount('B-1', 'box'), mount('C-2'));
    expect(last).toStrictEqual({
      ok: true,
      events: [
        {
          type: 'LotMounted',
          data: { station: 'rough-in', lot: 'C-2', kind: 'cable', replaces: 'C-1', usable: true },
        },
      ],
    });
    expect(state.mounted).toStrictEqual({ cable: 'C-2', box: 'B-1' });
  });

  it('records nothing for a lot that is open there already', () => {
    expect(told(STATION, ANY, mount('C-1'), mount('C-1')).last).toStrictEqual({ ok: true, events: [] });
  });

  it('takes no lot that is in quarantine or past its day: the pallet goes back', () => {
    const { last } = told(STATION, { ...ANY, usable: false }, mount('C-1'));
    expect(last).toMatchObject({ ok: false, rejection: { code: 'lot-not-usable', lot: 'C-1' } });
  });

  it('takes a lot down', () => {
    const down = { type: 'UnmountLot', data: { station: 'rough-in', lot: 'C-1' } } as const;
    expect(told(STATION, ANY, mount('C-1'), down).state.mounted).toStrictEqual({});
    expect(told(STATION, ANY, down).last).toMatchObject({ rejection: { code: 'lot-not-mounted' } });
  });

  it.each([
    ['station-unknown', { stations: new Set(['floor']), lotKinds: new Set(['strap']), receivedAs: 'strap' }],
    ['lot-kind-unknown', { lotKinds: new Set(['strap']), receivedAs: 'strap' }],
    ['lot-of-other-kind', { receivedAs: 'strap' }],
  ])('rejects %s before all that comes after it', (code, facts) => {
    expect(told(STATION, { ...ANY, ...facts }, mount('C-1')).last).toMatchObject({ rejection: { code } });
  });
});

describe('a lot', () => {
  const facts = { lotKinds: new Set(['cable']) };
  const width = { characteristic: 'strap-width', value: '1.5', unit: '[in_i]' };
  const data = { lot: 'C-1', kind: 'cable', maker: null, properties: [width], usableUntil: '2026-05-01' };
  const receive = { type: 'ReceiveLot', data } as const;
  const asLabelled = {
    type: 'ReceiveLotUnlessKnown',
    data: { ...data, properties: [], usableUntil: null },
  } as const;
  const quarantine = { type: 'QuarantineLot', data: { lot: 'C-1', reason: 'suspect-lot' } } as const;
  const release = { type: 'ReleaseLot', data: { lot: 'C-1' } } as const;

  it('is received once', () => {
    expect(told(LOT, facts, receive).last).toStrictEqual({
      ok: true,
      events: [{ type: 'LotReceived', data }],
    });
    expect(told(LOT, facts, receive, receive).last).toMatchObject({
      rejection: { code: 'lot-already-received' },
    });
  });

  it('gets its certificate when it was mounted before it was received', () => {
    const { state } = told(LOT, facts, asLabelled, receive);
    expect(state.properties).toStrictEqual([width]);
    expect(told(LOT, facts, receive, asLabelled).last).toStrictEqual({ ok: true, events: [] });
  });

  it('is of a kind the rulebook has', () => {
    expect(told(LOT, { lotKinds: new Set(['strap']) }, receive).last).toMatchObject({
      rejection: { code: 'lot-kind-unknown' },
    });
  });

  it('may be used to its last day, and not while it is in quarantine', () => {
    const { state } = told(LOT, facts, receive);
    expect([isUsableLot(state, '2026-05-01'), isUsableLot(state, '2026-05-02')]).toStrictEqual([true, false]);
    const held = told(LOT, facts, receive, quarantine);
    expect(isUsableLot(held.state, '2026-04-01')).toBe(false);
    expect(isUsableLot(told(LOT, facts, receive, quarantine, release).state, '2026-04-01')).toBe(true);
  });

  it('is in quarantine once, and out of it only from there', () => {
    expect(told(LOT, facts, receive, quarantine, quarantine).last).toStrictEqual({ ok: true, events: [] });
    expect(told(LOT, facts, receive, release).last).toMatchObject({
      rejection: { code: 'lot-not-quarantined' },
    });
    expect(told(LOT, facts, quarantine).last).toMatchObject({ rejection: { code: 'lot-unknown' } });
  });
});

describe('an instrument', () => {
  const facts = { instrumentKinds: new Set(['gauge']) };
  const data = { instrument: 'G-1', kind: 'gauge', properties: [], dueOn: '2026-05-01', inTolerance: true };
  const calibrate = (change: Partial<typeof data> = {}) =>
    ({ type: 'CalibrateInstrument', data: { ...data, ...change } }) as const;

  it('may be used until its calibration is due, while it is found in tolerance', () => {
    const { state } = told(INSTRUMENT, facts, calibrate());
    expect([isUsableInstrument(state, '2026-05-01'), isUsableInstrument(state, '2026-05-02')]).toStrictEqual([
      true,
      false,
    ]);
    const { state: off } = told(INSTRUMENT, facts, calibrate(), calibrate({ inTolerance: false }));
    expect(isUsableInstrument(off, '2026-03-01')).toBe(false);
  });

  it('stays of the kind it is', () => {
    expect(told(INSTRUMENT, facts, calibrate({ kind: 'ruler' })).last).toMatchObject({
      rejection: { code: 'instrument-kind-unknown' },
    });
    const both = { instrumentKinds: new Set(['gauge', 'ruler']) };
    expect(told(INSTRUMENT, both, calibrate(), calibrate({ kind: 'ruler' })).last).toMatchObject({
      rejection: { code: 'instrument-of-other-kind' },
    });
  });
});

describe('a person', () => {
  const data = {
    person: 'p-1',
    name: 'sealed',
    roles: ['station-lead'],
    crew: 'floor',
    stations: [],
  } as const;
  const enroll = { type: 'EnrollPerson', data } as const;
  const leave = { type: 'RecordLeaving', data: { person: 'p-1' } } as const;

  it('is qualified until the day said last, and no longer once that is ended or they have left', () => {
    const qualify = (until: string | null) =>
      ({ type: 'Qualify', data: { person: data.person, token: 'crew:quality', until } }) as const;
    const end = { type: 'EndQualification', data: { person: data.person, token: 'crew:quality' } } as const;
    expect(told(PERSON, {}, enroll, qualify('2026-03-31'), qualify(null)).state.qualifications).toStrictEqual(
      [{ token: 'crew:quality', until: null }],
    );
    expect(told(PERSON, {}, enroll, qualify(null), end).state.qualifications).toStrictEqual([]);
    expect(told(PERSON, {}, enroll, end).last).toStrictEqual({ ok: true, events: [] });
    expect(told(PERSON, {}, qualify(null)).last).toMatchObject({ rejection: { code: 'person-unknown' } });
  });

  it('has the roles they were enrolled with last', () => {
    const promoted = { ...enroll, data: { ...data, roles: ['inspector'] } } as const;
    expect(told(PERSON, {}, enroll, promoted).state).toStrictEqual({
      enrolled: true,
      roles: ['inspector'],
      qualifications: [],
      crew: 'floor',
    });
  });

  it('may nothing more once they have left', () => {
    expect(told(PERSON, {}, enroll, leave).state).toStrictEqual(PERSON.initial);
    expect(told(PERSON, {}, leave).last).toMatchObject({ rejection: { code: 'person-unknown' } });
  });
});

describe('a label number', () => {
  const facts = {
    actor: 'manager',
    roles: ['quality-manager'],
    isReceived: true,
    wornBy: { serial: 'T-1A', number: 'ABC123456', replaces: null },
  };
  it('is used once, whoever asks', () => {
    const use = (serial: string) => ({ type: 'UseLabel', data: { number: 'ABC123456', serial } }) as const;
    expect(told(LABEL, facts, use('T-1A')).last).toMatchObject({ ok: true });
    expect(told(LABEL, facts, use('T-1A'), use('T-1B')).last).toStrictEqual({
      ok: false,
      rejection: { code: 'label-already-used', number: 'ABC123456', serial: 'T-1A' },
    });
  });
});

describe('the rulebook', () => {
  const facts = { actor: 'office', now: '2026-01-01T00:00:00.000Z' };
  const issue = (digest: string, effectiveFrom: string) =>
    ({ type: 'IssueRevision', data: { effectiveFrom, files: {}, digest, approvedBy: null } }) as const;
  const spring = issue('a', '2026-03-01T00:00:00.000-06:00');
  const summer = issue('b', '2026-06-01T00:00:00.000-05:00');

  it('numbers its revisions in a row', () => {
    const { state } = told(RULEBOOK, facts, spring, summer);
    expect(state.revisions.map(({ revision }) => revision)).toStrictEqual([1, 2]);
  });

  it('issues the same files for the same day once', () => {
    expect(told(RULEBOOK, facts, spring, spring).last).toStrictEqual({ ok: true, events: [] });
  });

  it('has in force what became effective last', () => {
    const { state } = told(RULEBOOK, facts, spring, summer);
    expect(inForceAt(state, '2026-02-28T23:59:59.000-06:00')).toBeNull();
    expect(inForceAt(state, '2026-03-01T00:00:00.000-06:00')?.revision).toBe(1);
    expect(inForceAt(state, '2026-06-01T05:00:00.000Z')?.revision).toBe(2);
  });
});

describe('a plant', () => {
  it('is opened once and stays as it is', () => {
    const open = (name: string) =>
      ({ type: 'OpenPlant', data: { name, zone: 'America/Chicago', demonstration: true } }) as const;
    const { state, last } = told(PLANT, {}, open('Quillmere'), open('Another'));
    expect(state.opened?.name).toBe('Quillmere');
    expect(last).toStrictEqual({ ok: true, events: [] });
  });
});
