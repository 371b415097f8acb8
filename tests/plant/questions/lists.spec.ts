import { ROUTES } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import { DRY, HOME, WET, openSmallPlant, orderDouble } from '../../support/small-plant';
import type { SmallPlant } from '../../support/small-plant';

describe('the lists of a plant', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    await orderDouble(small, 'T-200');
  });
  afterEach(() => small.clear());

  const line = async (...stages: string[]): Promise<AnswerOf<'line'>['sections']> =>
    ROUTES.line.answer.parse(await small.plant.asks.line(stages)).sections;
  const homes = async (search: string): Promise<readonly string[]> =>
    ROUTES.homes.answer.parse(await small.plant.asks.homes(search)).homes.map(({ home }) => home);

  it('show on the line what has started, along the line', async () => {
    await small.tell('start', { serial: DRY, at: 'chassis' });
    await small.tell('start', { serial: WET, at: 'chassis' });
    await small.tell('move', { serial: DRY, to: 'floor' });
    expect((await line()).map(({ serial, station }) => [serial, station])).toStrictEqual([
      [WET, 'chassis'],
      [DRY, 'floor'],
    ]);
    expect((await line('ordered')).map(({ serial }) => serial)).toStrictEqual(['T-200A', 'T-200B']);
  });

  it('say of a section what holds it, what is open and what happened last', async () => {
    await small.tell('start', { serial: WET, at: 'chassis' });
    await small.tell('move', { serial: WET, to: 'floor' });
    await small.tell('work', { serial: WET, operation: 'floor-framed' });
    await small.tell(
      'defect',
      { serial: WET, component: 'deck', symptom: 'loose', foundAt: 'floor', operation: 'decked', hold: true },
      'inspector',
    );
    const [section] = await line();
    expect(section).toMatchObject({ defects: { nonconformance: 1, punch: 0 }, role: 'wet', model: 'Alder' });
    expect(section?.openWork).toBeGreaterThan(0);
    expect(section?.holds).toBeGreaterThan(0);
    expect(section?.heldBy?.en).toMatch(/^Held: /);
    expect(section?.lastSays.en).not.toBe('');
  });

  it('keep a section that is pulled, at the station it was pulled from', async () => {
    await small.tell('start', { serial: WET, at: 'chassis' });
    const { reasons = [] } = await small.plant.asks.plant();
    const reason = reasons.find((one) => one.for.includes('pull'))?.id ?? '';
    await small.tell('pull', { serial: WET, reason });
    expect(await line()).toMatchObject([{ serial: WET, stage: 'pulled', station: 'chassis' }]);
  });

  it('find a home by part of its serial, of a section’s, or of its model, whatever the case', async () => {
    expect(await homes('t-20')).toStrictEqual(['T-200']);
    expect(await homes('100B')).toStrictEqual([HOME]);
    expect([...(await homes('ALDER'))].sort()).toStrictEqual([HOME, 'T-200']);
    expect(await homes('nothing like it')).toStrictEqual([]);
  });

  it('take what is searched for as it stands, wild cards of the database among it', async () => {
    expect(await homes('%')).toStrictEqual([]);
    expect(await homes('T_100')).toStrictEqual([]);
  });

  it('put the home that something happened to last first', async () => {
    await small.tell('start', { serial: WET, at: 'chassis' });
    expect(await homes('')).toStrictEqual([HOME, 'T-200']);
    await small.tell('start', { serial: 'T-200A', at: 'chassis' });
    expect(await homes('')).toStrictEqual(['T-200', HOME]);
  });

  it('name the plant, its stations and codes, and the sentence that stands beside every limit', async () => {
    const plant = ROUTES.plant.answer.parse(await small.plant.asks.plant());
    expect(plant).toMatchObject({ name: 'Test plant', demonstration: true, revision: 1 });
    expect(plant.governing.en).toBe(
      'Follow the approved design, the quality assurance manual, the inspection agencies and local codes; this record does not replace them.',
    );
    expect(plant.stations.map(({ id }) => id)).toContain('drywall');
    for (const { operations } of plant.faults) {
      for (const operation of operations) {
        expect(plant.operations.map(({ id }) => id)).toContain(operation);
      }
    }
  });
});
