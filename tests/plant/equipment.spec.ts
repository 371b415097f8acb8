import { DRY, HOME, WET, openSmallPlant, orderDouble } from '../support/small-plant';
import type { SmallPlant } from '../support/small-plant';

/** Lots, gauges, qualifications and changed orders, told to a whole plant on a SQLite file. */
describe('what has become of lots, gauges and orders', () => {
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

  it('an order changed in mid-line says on each section what that changes, and is judged by from then on', async () => {
    await batts(WET);
    await small.tell('orderChange', { home: HOME, design: { stud: '2x4' } }, 'manager');
    expect(await holdsOn(WET)).toContainEqual(['value-out-of-limits', 'walls-insulated']);
    const section = await small.plant.asks.section(DRY, 'all');
    const batt = section?.operations
      .find(({ operation }) => operation === 'walls-insulated')
      ?.values.find(({ characteristic }) => characteristic === 'batt');
    expect(batt?.required).toBe('"R-11"');
    expect(await small.typesOf(DRY)).toContain('OrderChanged');
  });

  it('an order about to change is shown what it changes first, the same that then is told, and nothing is recorded', async () => {
    await batts(WET);
    const head = await small.plant.head();
    const preview = await small.plant.rulebook.previewOrder(HOME, { design: { stud: '2x4' }, sections: [] });
    expect(await small.plant.head()).toBe(head);
    const wet = preview?.sections.find(({ serial }) => serial === WET);
    expect(wet?.findings.map(({ rule, operation }) => [rule, operation])).toStrictEqual([
      ['value-out-of-limits', 'walls-insulated'],
    ]);
    expect(wet?.changed.map(({ operation }) => operation)).toContain('walls-insulated');
    const told = await small.tell('orderChange', { home: HOME, design: { stud: '2x4' } }, 'manager');
    expect(told.events.map(({ type }) => type)).toContain('OrderChanged');
    expect(await holdsOn(WET)).toContainEqual(['value-out-of-limits', 'walls-insulated']);
    const again = await small.plant.rulebook.previewOrder(HOME, { design: { stud: '2x4' }, sections: [] });
    expect(again?.sections.flatMap(({ findings, changed }) => [...findings, ...changed])).toStrictEqual([]);
  });

  it('a preview of an order no plan can be made of says why, and of an unknown home says nothing', async () => {
    const { previewOrder } = small.plant.rulebook;
    const preview = await previewOrder(HOME, { design: { stud: '2x9' }, sections: [] });
    expect(preview?.sections.map(({ unfit }) => unfit)).toStrictEqual([
      expect.stringContaining('2x9'),
      expect.stringContaining('2x9'),
    ]);
    const one = { serial: WET, design: { stud: '2x9' } };
    const half = await previewOrder(HOME, { design: {}, sections: [one] });
    expect(half?.sections.map(({ serial, unfit }) => [serial, unfit === null])).toStrictEqual([
      [WET, false],
      [DRY, true],
    ]);
    expect(await previewOrder('T-999', { design: {}, sections: [] })).toBeUndefined();
  });

  it('a change no plan can be made of is not taken, and names the field', async () => {
    expect(
      await small.rejection('orderChange', { home: HOME, design: { stud: '2x9' } }, 'manager'),
    ).toMatchObject({ code: 'design-unfit', pointer: '/design/stud' });
    expect(
      await small.rejection(
        'orderChange',
        { home: HOME, sections: [{ serial: 'T-999A', design: {} }] },
        'manager',
      ),
    ).toMatchObject({ code: 'section-unknown', pointer: '/sections/0/serial' });
  });

  it('a deviation is asked for in place of the table, on this home alone, by the letter that approved it', async () => {
    await orderDouble(small, 'T-200');
    await small.tell('start', { serial: 'T-200A', at: 'chassis' });
    const decked = (serial: string) =>
      small.tell('work', {
        serial,
        operation: 'decked',
        values: [
          { characteristic: 'edge-spacing', value: '6.5', unit: '[in_i]' },
          { characteristic: 'field-spacing', value: '12', unit: '[in_i]' },
          { characteristic: 'adhesive', value: 'yes', unit: null },
        ],
      });
    await decked(WET);
    expect(await holdsOn(WET)).toContainEqual(['value-out-of-limits', 'decked']);
    const allows = { what: 'value', characteristic: 'edge-spacing', required: '<= 7' } as const;
    await small.tell(
      'deviation',
      { home: HOME, operation: 'decked', reference: 'letter 26-118', allows },
      'manager',
    );
    expect(await holdsOn(WET)).not.toContainEqual(['value-out-of-limits', 'decked']);

    const told = await decked(DRY);
    expect(told.findings.map(({ rule }) => rule)).not.toContain('value-out-of-limits');
    const other = await decked('T-200A');
    expect(other.findings.map(({ rule }) => rule)).toContain('value-out-of-limits');
    expect(
      await small.rejection(
        'deviation',
        { home: HOME, operation: 'decked', reference: 'x', allows: { ...allows, required: 'wide' } },
        'manager',
      ),
    ).toMatchObject({ code: 'cell-unfit', pointer: '/allows/required' });
  });

  it('a home sent to a county outside its zones is held, and let go when it goes elsewhere', async () => {
    await small.tell('destination', { home: HOME, destination: 'Gull Point' }, 'manager');
    expect(await holdsOn(WET)).toContainEqual(['destination-outside-zones', null]);
    expect(await holdsOn(DRY)).toContainEqual(['destination-outside-zones', null]);
    await small.tell('destination', { home: HOME, destination: 'Millbrook' }, 'manager');
    expect(await holdsOn(WET)).toStrictEqual([]);
  });

  it('what the home missed of its sections is made good on each of them, once it is laid open and looked at', async () => {
    await small.tell('work', { serial: HOME, operation: 'mate-line-closed', values: [] }, 'installer-lead');
    const missed = async (): Promise<number> =>
      ((await small.plant.asks.section(HOME, 'site'))?.holds ?? []).filter(
        ({ reason, operation }) => reason === 'cover-hides-unproven' && operation === 'gasket-set',
      ).length;
    expect(await missed()).toBe(1);
    const gasket = (serial: string, proof: 'signed' | 'reconstructed', by: string) =>
      small.tell(
        'work',
        {
          serial,
          operation: 'gasket-set',
          proof,
          values: [{ characteristic: 'whole', value: 'yes', unit: null }],
          photos: ['0'.repeat(64)],
        },
        by,
      );
    await gasket(WET, 'signed', 'exterior-lead');
    await gasket(DRY, 'signed', 'exterior-lead');
    expect(await missed()).toBe(1);
    await gasket(WET, 'reconstructed', 'manager');
    await gasket(DRY, 'reconstructed', 'manager');
    expect(await missed()).toBe(0);
  });
});
