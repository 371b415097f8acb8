import { goodValues, mountLotsFor, planned, tellGood, PHOTO } from '../support/good-work';
import { DRY, HOME, WET, openSmallPlant, orderDouble } from '../support/small-plant';
import type { SmallPlant } from '../support/small-plant';

/** All that drywall hides or needs, with what that needs: the plates come last. */
const BEHIND_DRYWALL = [
  'boxes-set',
  'backing-set',
  'openings-blocked',
  'wired',
  'walls-piped',
  'gas-run',
  'pan-tested',
  'walls-insulated',
  'joints-sealed',
] as const;

describe('a section between rough-in and drywall', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    await small.tell('start', { serial: WET, at: 'rough-in' });
    for (const operation of BEHIND_DRYWALL) {
      await mountLotsFor(small, operation);
      await tellGood(small, WET, operation);
    }
    await mountLotsFor(small, 'wire-protected');
  });
  afterEach(() => small.clear());

  const askToBoard = (except: string[] = []) =>
    small.tell('asking', { serial: WET, operation: 'drywalled', except }, 'drywall-lead');

  const inspect = async (except: string[] = []) => {
    await tellGood(small, WET, 'rough-in-inspected', { except });
    return tellGood(small, WET, 'insulation-inspected');
  };

  it('is refused its drywall for missing plates, and cleared once they are recorded', async () => {
    const refused = await askToBoard();
    expect(refused.answer).toBe('refused');
    expect(refused.findings.map(({ operation }) => operation)).toContain('wire-protected');

    await tellGood(small, WET, 'wire-protected');
    await inspect();
    const cleared = await askToBoard();
    expect([cleared.answer, cleared.findings.filter(({ grade }) => grade !== 'note')]).toStrictEqual([
      'cleared',
      [],
    ]);
  });

  it('is cleared except at the kitchen when the plates are on except at the kitchen', async () => {
    await tellGood(small, WET, 'wire-protected', { except: ['kitchen'] });
    await inspect(['kitchen']);
    expect((await askToBoard()).answer).toBe('refused');
    expect((await askToBoard(['kitchen'])).answer).toBe('cleared');
  });

  it('is cleared on a forgotten entry that an inspector has seen, with a photo', async () => {
    await small.tell(
      'work',
      {
        serial: WET,
        operation: 'wire-protected',
        proof: 'seen',
        values: [...goodValues('wire-protected')],
        photos: [PHOTO],
      },
      'inspector',
    );
    await inspect();
    expect((await askToBoard()).answer).toBe('cleared');
  });

  it('boarded all the same goes on record and is held; telling the plates afterwards frees nothing', async () => {
    await inspect();
    const boarded = await tellGood(small, WET, 'drywalled');
    const byCover = boarded.holds.filter(({ operation }) => operation === 'wire-protected');
    expect(byCover.map(({ reason }) => reason)).toContain('cover-hides-unproven');

    const late = await tellGood(small, WET, 'wire-protected');
    expect(late.holds.map(({ reason }) => reason)).toEqual(
      expect.arrayContaining(['cover-hides-unproven', 'recorded-under-cover']),
    );
    const reconstructed = await small.tell(
      'work',
      {
        serial: WET,
        operation: 'wire-protected',
        proof: 'reconstructed',
        values: [...goodValues('wire-protected')],
        photos: [PHOTO],
      },
      'manager',
    );
    expect(reconstructed.holds.filter(({ operation }) => operation === 'wire-protected')).toStrictEqual([]);
  });

  it('is held for plates that are missing, until the rework is verified by someone else', async () => {
    const values = goodValues('wire-protected').map((value) =>
      value.characteristic === 'bare-notches' ? { ...value, value: '2' } : value,
    );
    const told = await tellGood(small, WET, 'wire-protected', { values: [...values] });
    const [hold] = told.holds;
    const defect = hold?.defect ?? '';
    expect(hold).toMatchObject({ reason: 'value-out-of-limits', operation: 'wire-protected' });
    expect((await askToBoard()).answer).toBe('refused');

    const params = { defect };
    expect(
      await small.rejection('verification', { serial: WET, accepted: true }, 'inspector', { params }),
    ).toMatchObject({
      code: 'rework-not-done',
    });
    await small.tell('rework', { serial: WET, crew: 'electrical' }, 'electrical-lead', { params });
    expect(
      await small.rejection('verification', { serial: WET, accepted: true }, 'electrical-lead', { params }),
    ).toMatchObject({ code: 'verified-by-own-hand' });
    const verified = await small.tell('verification', { serial: WET, accepted: true }, 'inspector', {
      params,
    });
    expect(verified.events.map(({ type }) => type)).toStrictEqual(['DefectVerified', 'HoldReleased']);
    expect(verified.holds).toStrictEqual([]);
  });

  it('places a hold for a value left out, and releases it when the value is told', async () => {
    const withoutOne = goodValues('wire-protected').slice(1);
    const told = await tellGood(small, WET, 'wire-protected', { values: [...withoutOne] });
    expect(told.holds.map(({ reason }) => reason)).toStrictEqual(['value-missing']);

    const rest = await tellGood(small, WET, 'wire-protected', {
      values: goodValues('wire-protected').slice(0, 1),
    });
    expect(rest.events.map(({ type }) => type)).toStrictEqual(['WorkRecorded', 'HoldReleased']);
    expect(rest.holds).toStrictEqual([]);
  });
});

describe('lots at a station', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    await small.tell('start', { serial: WET, at: 'wall-set' });
  });
  afterEach(() => small.clear());

  it('are inherited by the sections worked there, their certificates judged like entries', async () => {
    await mountLotsFor(small, 'floor-strapped');
    const told = await tellGood(small, WET, 'floor-strapped');
    const ofStrap = told.findings.filter(
      ({ characteristic }) => characteristic?.startsWith('strap-') === true,
    );
    expect(ofStrap).toStrictEqual([]);
    const history = await small.plant.asks.history(WET);
    const entry = history?.entries.find(({ type }) => type === 'WorkRecorded');
    expect(entry?.data).toMatchObject({ lots: expect.arrayContaining(['wall-set-strap-1']) });
  });

  it('of too thin a strap hold the section, whatever the lead typed', async () => {
    const thin = { characteristic: 'strap-gauge', value: '28', unit: '1' };
    await small.tell('lot', { lot: 'S-28', kind: 'strap', properties: [thin] }, 'manager');
    await small.tell('mounting', { station: 'wall-set', lot: 'S-28', kind: 'strap' });
    const told = await tellGood(small, WET, 'floor-strapped');
    expect(told.findings).toContainEqual(
      expect.objectContaining({ rule: 'value-out-of-limits', characteristic: 'strap-gauge', recorded: '28' }),
    );
  });

  it('nobody received are on record with their mounting', async () => {
    const mounted = await small.tell('mounting', { station: 'wall-set', lot: 'S-9', kind: 'strap' });
    expect(mounted.events.map(({ type, stream }) => `${stream} ${type}`)).toStrictEqual([
      'lot/S-9 LotReceived',
      'station/wall-set LotMounted',
    ]);
  });

  it('are taken by the kind they were received as', async () => {
    await small.tell('lot', { lot: 'N-1', kind: 'nail' }, 'manager');
    expect(
      await small.rejection('mounting', { station: 'wall-set', lot: 'N-1', kind: 'strap' }),
    ).toMatchObject({
      code: 'lot-of-other-kind',
    });
  });
});

describe('a wrong serial', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    await small.tell('start', { serial: WET, at: 'wall-shop' });
    await small.tell('start', { serial: DRY, at: 'wall-shop' });
    await tellGood(small, WET, 'walls-framed');
  });
  afterEach(() => small.clear());

  it('is put right in one commit: out of one history, into the other', async () => {
    const right = await small.tell('wrongSerial', {
      recordedOn: WET,
      belongsTo: DRY,
      operation: 'walls-framed',
      note: 'the other half',
    });
    expect(right.events.map(({ type, stream }) => `${stream} ${type}`)).toStrictEqual([
      `section/${DRY} WorkRecorded`,
      `section/${WET} WorkWithdrawn`,
    ]);
    const wet = await small.plant.asks.section(WET, 'all');
    const dry = await small.plant.asks.section(DRY, 'all');
    const mark = (section: typeof wet) =>
      section?.operations.find(({ operation }) => operation === 'walls-framed')?.done;
    expect(mark(wet)).toBeNull();
    expect(mark(dry)?.values.length).toBe(goodValues('walls-framed').length);
  });

  it('is not put right twice, nor onto itself', async () => {
    await small.tell('wrongSerial', { recordedOn: WET, belongsTo: DRY, operation: 'walls-framed' });
    expect(
      await small.rejection('wrongSerial', { recordedOn: WET, belongsTo: DRY, operation: 'walls-framed' }),
    ).toMatchObject({ code: 'work-not-recorded', pointer: '/operation' });
    expect(
      await small.rejection('wrongSerial', { recordedOn: DRY, belongsTo: DRY, operation: 'walls-framed' }),
    ).toMatchObject({ code: 'same-serial' });
  });
});

describe('a home at its site', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    await small.tell('start', { serial: WET, at: 'mate-line' });
    await small.tell('start', { serial: DRY, at: 'mate-line' });
  });
  afterEach(() => small.clear());

  const askToJoin = () =>
    small.tell('asking', { serial: WET, operation: 'mate-line-closed' }, 'installer-lead');

  it('has the work at the site in its own history, whichever half was scanned', async () => {
    const told = await tellGood(small, DRY, 'blocking-removed');
    expect([told.serial, told.events[0]?.stream]).toStrictEqual([HOME, `home/${HOME}`]);
  });

  it('is not joined over a gasket that only one half has on record', async () => {
    await mountLotsFor(small, 'gasket-set');
    await tellGood(small, WET, 'gasket-set');
    const missing = (await askToJoin()).findings.filter(({ grade }) => grade === 'refuse');
    expect(missing.map(({ operation }) => operation)).toStrictEqual(['gasket-set']);

    await tellGood(small, DRY, 'gasket-set');
    expect((await askToJoin()).answer).toBe('cleared');
  });

  it('signs its site off for the whole home', async () => {
    const signed = await small.tell('signOff', { serial: WET, station: 'site' }, 'installer-lead');
    expect(signed.events[0]).toMatchObject({ stream: `home/${HOME}`, type: 'StationSignedOff' });
    expect(planned('site-set').scope).toBe('home');
  });
});
