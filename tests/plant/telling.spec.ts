import { firstValueFrom, take, toArray } from 'rxjs';
import { PHOTO, mountLotsFor, tellGood } from '../support/good-work';
import { DRY, HOME, WET, openSmallPlant, orderDouble } from '../support/small-plant';
import type { SmallPlant } from '../support/small-plant';

describe('what a plant is told', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
  });
  afterEach(() => small.clear());

  const places = (answer: {
    readonly events: readonly { readonly stream: string; readonly type: string }[];
  }) => answer.events.map(({ stream, type }) => `${stream} ${type}`);

  it('orders a home with its sections in one commit', async () => {
    expect(places(await orderDouble(small, 'T-200'))).toStrictEqual([
      'home/T-200 HomeOrdered',
      'section/T-200A SectionOrdered',
      'section/T-200B SectionOrdered',
    ]);
  });

  it('orders nothing when one of the sections is ordered already', async () => {
    const before = await small.plant.head();
    const rejection = await small.rejection('home', {
      home: 'T-300',
      model: 'Alder',
      design: (await small.plant.asks.section(WET, null))?.design ?? {},
      sections: [
        { serial: 'T-300A', design: { role: 'wet' } },
        { serial: WET, design: { role: 'dry' } },
      ],
    });
    expect(rejection).toMatchObject({ code: 'serial-already-ordered', serial: WET });
    expect(await small.plant.head()).toBe(before);
  });

  it.each([
    ['an attribute nobody knows', { moat: 'yes' }, '/design/moat'],
    ['a value the attribute does not have', { wind: 'IX' }, '/design/wind'],
    ['another number of sections than are ordered', { sections: '3' }, '/design/sections'],
  ])('takes no design with %s, and names the field', async (_, change, pointer) => {
    const {
      role: _role,
      sections: _sections,
      ...design
    } = (await small.plant.asks.section(WET, null))?.design ?? {};
    const sections = [
      { serial: 'T-300A', design: { role: 'wet' } },
      { serial: 'T-300B', design: { role: 'dry' } },
    ];
    const order = { home: 'T-300', model: 'Alder', design: { ...design, ...change }, sections };
    expect(await small.rejection('home', order)).toMatchObject({ code: 'design-unfit', pointer });
  });

  it('judges all sections of a home by the revision its first section started with', async () => {
    expect(places(await small.tell('start', { serial: WET, at: 'chassis' }))).toStrictEqual([
      `home/${HOME} HomeStarted`,
      `section/${WET} SectionStarted`,
    ]);
    const { ['plant.yaml']: plantFile = '', ...files } = small.files;
    const again = { ...files, 'plant.yaml': `${plantFile}\n# issued again\n` };
    const issued = await small.plant.issueRevision(again, '2026-03-02T00:00:00.000-06:00', {
      key: 'second-revision',
      actor: 'manager',
      assurance: 'pin',
    });
    expect(issued).toStrictEqual({ ok: true, revision: 2 });
    expect(places(await small.tell('start', { serial: DRY, at: 'chassis' }))).toStrictEqual([
      `section/${DRY} SectionStarted`,
    ]);
    expect((await small.plant.asks.section(DRY, null))?.revision).toBe(1);

    await orderDouble(small, 'T-200');
    await small.tell('start', { serial: 'T-200A', at: 'chassis' });
    expect((await small.plant.asks.section('T-200A', null))?.revision).toBe(2);
  });

  it('answers the same key with the same answer, and takes it for nothing else', async () => {
    await small.tell('start', { serial: WET, at: 'chassis' });
    const body = { serial: WET, operation: 'frame-staged', occurredAt: '2026-03-02T07:05:00.000-06:00' };
    const first = await small.tell('work', body, 'chassis-lead', { key: 'once' });
    const again = await small.tell('work', body, 'chassis-lead', { key: 'once' });
    expect(again).toStrictEqual({ ...first, repeated: true });
    await expect(
      small.tell('work', { ...body, operation: 'gear-fitted' }, 'chassis-lead', { key: 'once' }),
    ).rejects.toThrow('used before for other content');
  });

  it('pulls a section off the line and returns it, and ships it with what is open written down', async () => {
    await small.tell('start', { serial: WET, at: 'floor' });
    await small.tell('pull', { serial: WET, reason: 'waiting-for-part', note: 'no tubs' });
    expect(await small.rejection('move', { serial: WET, to: 'wall-set' })).toMatchObject({
      code: 'section-not-on-line',
    });
    await small.tell('return', { serial: WET, to: 'floor' });
    const moved = await small.tell('move', { serial: WET, to: 'wall-set' });
    expect(moved.events.map(({ type }) => type)).toStrictEqual(['SectionMoved']);
    const shipped = await small.tell('shipment', { serial: WET });
    expect(shipped.findings.map(({ rule }) => rule)).toContain('left-with-open-work');
    expect((await small.plant.asks.section(WET, null))?.stage).toBe('shipped');
  });

  it('refuses a label while anything is missing, says what, and leaves the number unused', async () => {
    await small.tell('start', { serial: WET, at: 'final' });
    const refused = await small.tell(
      'label',
      { serial: WET, number: 'ABC 123 456', photos: [PHOTO] },
      'inspector',
    );
    expect(refused.answer).toBe('refused');
    expect(places(refused)).toStrictEqual([`section/${WET} LabelRefused`]);
    expect(refused.findings.map(({ rule }) => rule)).toEqual(
      expect.arrayContaining(['required-work-unproven', 'stage-not-seen']),
    );
  });

  it('holds a section for the plant’s own reason until someone who may decides', async () => {
    await small.tell('start', { serial: WET, at: 'floor' });
    const held = await small.tell('hold', { serial: WET, reason: 'look-again', note: 'smells of gas' });
    const params = { hold: held.holds[0]?.hold ?? '' };
    expect(await small.rejection('release', { serial: WET }, 'floor-lead', { params })).toMatchObject({
      code: 'not-allowed',
    });
    expect((await small.tell('release', { serial: WET }, 'manager', { params })).holds).toStrictEqual([]);
  });

  it('lets a machine decide by the role of its token, and a person only by the roles on record', async () => {
    await small.tell('start', { serial: WET, at: 'floor' });
    const held = await small.tell('hold', { serial: WET, reason: 'look-again' });
    const params = { hold: held.holds[0]?.hold ?? '' };
    const body = { serial: WET, via: 'import' } as const;
    const release = (actor: string) =>
      small.plant.tell.release(
        body,
        { key: `release by ${actor}`, actor, assurance: 'token', roles: ['quality-manager'] },
        params,
      );
    expect(await release('floor-lead')).toMatchObject({ ok: false, rejection: { code: 'not-allowed' } });
    expect(await release('token-1')).toMatchObject({ ok: true, answer: { holds: [] } });
  });

  it('writes notes down sealed, and reads them to who asks', async () => {
    await small.tell('start', { serial: WET, at: 'floor' });
    await small.tell('hold', { serial: WET, reason: 'look-again', note: 'smells of gas' });
    const entry = (await small.plant.asks.history(WET))?.entries.find(({ type }) => type === 'HoldPlaced');
    expect(entry?.note).toBe('smells of gas');
    expect(JSON.stringify(entry?.data)).not.toContain('smells');
  });

  it('says where in the request a rejected value stands', async () => {
    await small.tell('start', { serial: WET, at: 'floor' });
    const values = [
      { characteristic: 'fastened', value: 'yes' },
      { characteristic: 'colour', value: 'red' },
    ];
    const rejection = await small.rejection('work', { serial: WET, operation: 'floor-set', values });
    expect(rejection).toMatchObject({ code: 'characteristic-unknown' });
    expect(rejection.pointer).toMatch(/^\/values\/\d$/);
  });

  it('knows nobody’s serial before it is ordered', async () => {
    expect(await small.rejection('work', { serial: 'T-999', operation: 'floor-set' })).toStrictEqual({
      code: 'section-unknown',
      serial: 'T-999',
      pointer: '/serial',
    });
  });

  it('signs a station off with what was excepted left open', async () => {
    await small.tell('start', { serial: WET, at: 'rough-in' });
    await mountLotsFor(small, 'boxes-set');
    const except = ['wired', 'wire-protected', 'walls-piped'].map((operation) => ({ operation }));
    const signed = await small.tell(
      'signOff',
      { serial: WET, station: 'rough-in', except },
      'electrical-lead',
    );
    expect(places(signed).slice(0, 2)).toStrictEqual([
      `section/${WET} StationSignedOff`,
      `section/${WET} WorkRecorded`,
    ]);
    const section = await small.plant.asks.section(WET, 'rough-in');
    const marks = Object.fromEntries(
      (section?.operations ?? []).map(({ operation, done }) => [operation, done !== null]),
    );
    expect(marks).toMatchObject({ 'boxes-set': true, wired: false, 'wire-protected': false });
  });

  it('says the same after a restart', async () => {
    await small.tell('start', { serial: WET, at: 'rough-in' });
    await tellGood(small, WET, 'boxes-set');
    const before = [await small.plant.asks.section(WET, 'all'), await small.plant.people()];
    const again = await small.reopened();
    expect([await again.asks.section(WET, 'all'), await again.people()]).toStrictEqual(before);
  });

  it('knows its instruments from their first calibration on', async () => {
    await small.tell('start', { serial: WET, at: 'test' });
    const test = { serial: WET, operation: 'water-tested', instrument: 'G-1' };
    expect(await small.rejection('work', test, 'inspector')).toMatchObject({
      code: 'instrument-unknown',
      pointer: '/instrument',
    });
    await small.plant.calibrate(
      { instrument: 'G-1', kind: 'water-gauge', properties: [], dueOn: '2026-12-31', inTolerance: true },
      { key: 'calibrated', actor: 'manager', assurance: 'pin' },
    );
    const told = await small.tell('work', test, 'inspector');
    expect(told.findings.map(({ rule }) => rule)).not.toContain('instrument-missing');
  });
});

describe('news from a plant', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
  });
  afterEach(() => small.clear());

  it('begins after the position asked for and goes on live, without a gap and without a repeat', async () => {
    await orderDouble(small);
    const head = await small.plant.head();
    const heard = firstValueFrom(small.plant.news(head - 3).pipe(take(8), toArray()));
    await small.tell('start', { serial: WET, at: 'chassis' });
    await orderDouble(small, 'T-200');
    const news = await heard;
    expect(news.map(({ position }) => position)).toStrictEqual(
      Array.from({ length: 8 }, (_, index) => head - 2 + index),
    );
    expect(news[3]).toMatchObject({ type: 'HomeStarted', stream: `home/${HOME}` });
    expect(news[4]).toMatchObject({ type: 'SectionStarted', serial: WET });
  });

  it('is told alike to all who listen, from wherever they begin', async () => {
    const all = firstValueFrom(small.plant.news(0).pipe(take(30), toArray()));
    const late = firstValueFrom(small.plant.news(await small.plant.head()).pipe(take(3), toArray()));
    for (let home = 1; home <= 4; home += 1) await orderDouble(small, `N-${String(home)}`);
    const [whole, end] = await Promise.all([all, late]);
    expect(whole.map(({ position }) => position)).toStrictEqual(
      Array.from({ length: 30 }, (_, index) => index + 1),
    );
    expect(whole).toEqual(expect.arrayContaining(end));
  });
});
