import { ROUTES } from '@libs/contracts';
import { DRY, WET, openSmallPlant, orderDouble } from '../../support/small-plant';
import type { SmallPlant } from '../../support/small-plant';

const ALL = { from: null, to: null };
const ANY = { station: null, class: 'nonconformance' };

describe('the defects of a plant', () => {
  let small: SmallPlant;
  const found = (serial: string, component: string, symptom: string, operation: string) =>
    small.tell('defect', { serial, component, symptom, foundAt: 'floor', operation }, 'inspector');

  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    for (const serial of [WET, DRY]) await small.tell('start', { serial, at: 'chassis' });
    await found(WET, 'deck', 'loose', 'decked');
    await found(DRY, 'deck', 'loose', 'decked');
    await found(DRY, 'wallboard', 'mismatched', 'taped');
  });
  afterEach(() => small.clear());

  it('are counted worst first, with shares and what they come to together', async () => {
    const { total, rows } = ROUTES.defectCounts.answer.parse(
      await small.plant.asks.defectCounts('code', ANY, ALL),
    );
    expect(total).toBe(3);
    expect(rows.map(({ key, count, cumulative }) => [key, count, cumulative])).toStrictEqual([
      ['deck loose', 2, 2 / 3],
      ['wallboard mismatched', 1, 1],
    ]);
    expect(rows[0]?.says.en).toContain('loose');
  });

  it.each([
    ['component', ['deck', 'wallboard']],
    ['symptom', ['loose', 'mismatched']],
    ['station', ['floor', 'drywall']],
    ['operation', ['decked', 'taped']],
  ])('are counted by %s', async (by, keys) => {
    const { rows } = await small.plant.asks.defectCounts(by, ANY, ALL);
    expect(rows.map(({ key }) => key)).toStrictEqual(keys);
  });

  it('are weighed by what the plant says they cost, those without a cost left out and told of', async () => {
    const costs = [{ component: 'deck', cost: '12.50' }];
    await small.tell('defectCosts', { currency: 'USD', costs }, 'manager');
    const answer = await small.plant.asks.defectCounts('station', { ...ANY, weigh: 'cost' }, ALL);
    expect(ROUTES.defectCounts.answer.parse(answer)).toMatchObject({
      weigh: 'cost',
      currency: 'USD',
      unpriced: 1,
      total: 25,
      rows: [{ key: 'floor', count: 25, share: 1 }],
    });
  });

  it('cost nothing by a component the rulebook does not have', async () => {
    const strange = { currency: 'USD', costs: [{ component: 'moon-rock', cost: '1' }] };
    expect(await small.rejection('defectCosts', strange, 'manager')).toMatchObject({
      code: 'component-unknown',
      component: 'moon-rock',
    });
  });

  it('are counted by the crew that made them and the lots that went in', async () => {
    await small.tell('move', { serial: WET, to: 'floor' });
    await small.tell('mounting', { station: 'floor', lot: 'L-7', kind: 'deck-panel' });
    await small.tell('work', { serial: WET, operation: 'decked', lots: ['L-7'] });
    await found(WET, 'deck', 'cracked', 'decked');
    const by = async (what: string): Promise<unknown> =>
      (await small.plant.asks.defectCounts(what, { ...ANY, station: 'floor' }, ALL)).rows.map(
        ({ key, count }) => [key, count],
      );
    // The lots of the operation that fell short, whenever the defect was found; no lot on record is a row of its own.
    expect(await by('lot')).toStrictEqual([
      ['L-7', 2],
      ['', 1],
    ]);
    expect(await by('crew')).toHaveLength(2);
  });

  it('are counted for the station they are charged to alone, and for their class alone', async () => {
    const ofFloor = await small.plant.asks.defectCounts('code', { ...ANY, station: 'floor' }, ALL);
    expect(ofFloor.total).toBe(2);
    const punch = await small.plant.asks.defectCounts('code', { station: null, class: 'punch' }, ALL);
    expect(punch).toMatchObject({ total: 0, rows: [] });
  });

  it('are listed latest first, and by serial, station or component', async () => {
    const listed = async (only: Readonly<Record<string, string | null>>): Promise<readonly string[]> =>
      ROUTES.defects.answer
        .parse(await small.plant.asks.defects(only, ALL))
        .defects.map(({ serial, component }) => `${serial} ${component}`);
    expect(await listed({})).toStrictEqual([`${DRY} wallboard`, `${DRY} deck`, `${WET} deck`]);
    expect(await listed({ serial: WET })).toStrictEqual([`${WET} deck`]);
    expect(await listed({ station: 'drywall', serial: null })).toStrictEqual([`${DRY} wallboard`]);
    expect(await listed({ component: 'deck' })).toStrictEqual([`${DRY} deck`, `${WET} deck`]);
    expect(await listed({ station: 'moon' })).toStrictEqual([]);
  });

  it('name the rule where a rule opened them', async () => {
    await small.tell('move', { serial: WET, to: 'floor' });
    await small.tell('work', {
      serial: WET,
      operation: 'decked',
      values: [{ characteristic: 'edge-spacing', value: '9', unit: '[in_i]' }],
    });
    const { rows } = await small.plant.asks.defectCounts('symptom', ANY, ALL);
    expect(rows.find(({ key }) => key === 'value-out-of-limits')?.says.en).toBe('value out of limits');
  });
});
