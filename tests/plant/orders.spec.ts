import { DRY, HOME, WET, openSmallPlant, orderDouble } from '../support/small-plant';
import type { SmallPlant } from '../support/small-plant';

/** Changed orders, deviations and destinations, told to a whole plant on a SQLite file. */
describe('what has become of orders', () => {
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
