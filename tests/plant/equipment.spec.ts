import { DRY, WET, openSmallPlant, orderDouble } from '../support/small-plant';
import type { SmallPlant } from '../support/small-plant';

/** Lots, gauges and qualifications, told to a whole plant on a SQLite file. */
describe('what has become of lots and gauges', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    for (const serial of [WET, DRY]) await small.tell('start', { serial, at: 'chassis' });
  });
  afterEach(() => small.clear());

  const holdsOn = async (serial: string) =>
    ((await small.plant.asks.section(serial, null))?.holds ?? []).map(({ reason, operation }) => [
      reason,
      operation,
    ]);
  const batts = (serial: string) =>
    small.tell('work', {
      serial,
      operation: 'walls-insulated',
      values: [
        { characteristic: 'batt', value: 'R-19', unit: null },
        { characteristic: 'voids', value: '0', unit: '1' },
      ],
      station: 'insulation',
    });

  describe('a lot', () => {
    beforeEach(async () => {
      const properties = [{ characteristic: 'retarder', value: '0.8', unit: '[perm_us]' }];
      await small.tell('lot', { lot: 'B-1', kind: 'batt', properties });
      await small.tell('mounting', { station: 'insulation', lot: 'B-1', kind: 'batt' });
    });
    const quarantine = (key?: string) =>
      small.tell('quarantine', { reason: 'suspect-lot' }, 'manager', {
        params: { lot: 'B-1' },
        ...(key === undefined ? {} : { key }),
      });

    it('quarantined holds the sections it is in, lists them, and is mounted no more', async () => {
      await batts(WET);
      expect(await quarantine()).toMatchObject({ sections: [WET] });
      expect(await holdsOn(WET)).toContainEqual(['lot-not-usable', 'walls-insulated']);
      expect(await holdsOn(DRY)).toStrictEqual([]);
      expect(await small.plant.asks.lotReach('B-1')).toMatchObject({
        quarantined: true,
        builtInto: [{ serial: WET, operation: 'walls-insulated', operationName: { en: 'Insulated' } }],
      });
      expect(
        await small.rejection('mounting', { station: 'rough-in', lot: 'B-1', kind: 'batt' }),
      ).toMatchObject({ code: 'lot-not-usable', pointer: '/lot' });
    });

    it('sent twice under one key holds once', async () => {
      await batts(WET);
      await quarantine('q');
      const head = await small.plant.head();
      await quarantine('q');
      expect(await small.plant.head()).toBe(head);
    });

    it('holds what is told after its quarantine by the judge, as work done with what may not be used', async () => {
      await quarantine();
      const told = await batts(DRY);
      expect(told.findings.map(({ rule }) => rule)).toContain('lot-not-usable');
    });

    it('found good after all lets its sections go', async () => {
      await batts(WET);
      await quarantine();
      expect(await small.tell('lotRelease', {}, 'manager', { params: { lot: 'B-1' } })).toMatchObject({
        sections: [WET],
      });
      expect(await holdsOn(WET)).toStrictEqual([]);
    });

    it('taken off its station is inherited by nobody', async () => {
      await small.tell('unmounting', { station: 'insulation', lot: 'B-1' });
      const told = await batts(DRY);
      expect(told.findings.map(({ rule }) => rule)).toContain('lot-missing');
    });

    it('past its last day is not mounted, and stands so in the list', async () => {
      await small.tell('lot', { lot: 'B-2', kind: 'batt', usableUntil: '2026-03-01' });
      expect(
        await small.rejection('mounting', { station: 'insulation', lot: 'B-2', kind: 'batt' }),
      ).toMatchObject({ code: 'lot-not-usable' });
      const { lots } = await small.plant.asks.equipment();
      expect(lots.map(({ lot, standing }) => [lot, standing])).toStrictEqual([
        ['B-1', 'good'],
        ['B-2', 'over'],
      ]);
    });
  });

  describe('a gauge', () => {
    const calibrate = (inTolerance: boolean, dueOn = '2026-12-31') =>
      small.tell(
        'calibration',
        {
          instrument: 'G-1',
          kind: 'water-gauge',
          properties: [],
          dueOn,
          inTolerance,
        },
        'manager',
      );
    const water = (serial: string) =>
      small.tell(
        'work',
        {
          serial,
          operation: 'water-tested',
          instrument: 'G-1',
          values: [
            { characteristic: 'pressure', value: '90', unit: '[psi]' },
            { characteristic: 'end-pressure', value: '90', unit: '[psi]' },
            { characteristic: 'time', value: '15', unit: 'min' },
          ],
        },
        'inspector',
      );

    it('found out of tolerance lists every section it tested since it was last found good', async () => {
      await calibrate(true);
      await water(WET);
      await calibrate(true);
      expect(await small.plant.asks.instrumentReach('G-1')).toMatchObject({ foundOn: null, tested: [] });
      await water(WET);
      await calibrate(false);
      const reach = await small.plant.asks.instrumentReach('G-1');
      expect(reach).toMatchObject({ instrument: 'G-1', kindName: { en: 'Water gauge' } });
      expect(reach?.tested.map(({ serial, operation }) => [serial, operation])).toStrictEqual([
        [WET, 'water-tested'],
      ]);
      expect(Date.parse(reach?.goodOn ?? '')).toBeLessThan(Date.parse(reach?.foundOn ?? ''));
    });

    it('due within a fortnight is noted, past its day holds, and never refuses', async () => {
      await calibrate(true, '2026-03-10');
      const soon = await water(WET);
      expect(soon.findings).toMatchObject(
        expect.arrayContaining([expect.objectContaining({ rule: 'instrument-due-soon', grade: 'note' })]),
      );
      await calibrate(true, '2026-03-01');
      const over = await water(WET);
      expect(over.findings).toMatchObject(
        expect.arrayContaining([expect.objectContaining({ rule: 'instrument-not-usable', grade: 'hold' })]),
      );
    });
  });

  it('a qualification lets somebody sign until its last day', async () => {
    const qualify = (until: string) =>
      small.tell('qualification', { person: 'floor-lead', token: 'crew:quality', until }, 'manager');
    const inspect = async () => {
      const told = await small.tell('work', { serial: WET, operation: 'floor-inspected' }, 'floor-lead');
      return told.findings.map(({ rule }) => rule).filter((rule) => rule.includes('qualif'));
    };
    expect(await inspect()).toStrictEqual(['signer-not-qualified']);
    await qualify('2026-12-31');
    expect(await inspect()).toStrictEqual([]);
    await qualify('2026-03-10');
    expect(await inspect()).toStrictEqual(['qualification-due-soon']);
    await qualify('2026-03-01');
    expect(await inspect()).toStrictEqual(['qualification-expired']);
    expect((await small.plant.asks.equipment()).qualifications).toMatchObject([
      { person: 'floor-lead', says: { en: 'Quality' }, standing: 'over' },
    ]);
    await small.tell('qualificationEnd', { person: 'floor-lead', token: 'crew:quality' }, 'manager');
    expect(await inspect()).toStrictEqual(['signer-not-qualified']);
  });
});
