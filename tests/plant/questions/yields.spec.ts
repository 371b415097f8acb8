import { ROUTES } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import { DRY, WET, openSmallPlant, orderDouble } from '../../support/small-plant';
import type { SmallPlant } from '../../support/small-plant';

const ALL = { from: null, to: null };
const FLOOR = 'floor';

/**
 * Two sections through two stations, counted by hand (first pass counts each section once, by what it looked like when
 * it first left: common practice, no published source for the counting rule). Wilson bounds of 1 of 2 and of 0 of 2
 * are from R 4.2.2, prop.test(1, 2, correct = FALSE) and prop.test(0, 2, correct = FALSE), from memory of its output
 * to four places: 0.0945 to 0.9055, and 0 to 0.6576.
 */
describe('the yield of a station', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    await small.tell('start', { serial: WET, at: 'chassis' });
    await small.tell('move', { serial: WET, to: FLOOR });
    await small.tell('start', { serial: DRY, at: 'chassis' });
    await small.tell('move', { serial: DRY, to: FLOOR });
  });
  afterEach(() => small.clear());

  const found = (serial: string, foundAt: string | null) =>
    small.tell(
      'defect',
      { serial, component: 'deck', symptom: 'loose', foundAt, operation: 'decked' },
      'inspector',
    );
  const leave = (serial: string) => small.tell('move', { serial, to: 'wall-set' });
  const rowOf = async (station: string): Promise<AnswerOf<'yield'>['rows'][number] | undefined> => {
    const answer = ROUTES.yield.answer.parse(await small.plant.asks.yieldByStation(ALL));
    return answer.rows.find((row) => row.station === station);
  };

  it('is not a figure while nothing has left', async () => {
    expect(await rowOf(FLOOR)).toMatchObject({
      left: 0,
      firstPass: null,
      firstPassInterval: { low: null, high: null },
    });
  });

  it('counts of the sections that left those with no nonconformance charged to it, with its interval', async () => {
    await found(WET, FLOOR);
    await leave(WET);
    await leave(DRY);
    const row = await rowOf(FLOOR);
    expect(row).toMatchObject({ left: 2, clean: 1, cleanWithEscapes: 1, firstPass: 0.5, nonconformances: 1 });
    expect(row?.firstPassInterval.low).toBeCloseTo(0.0945, 4);
    expect(row?.firstPassInterval.high).toBeCloseTo(0.9055, 4);
  });

  it('stays as it was seen when an escape is found, and falls with escapes', async () => {
    await leave(WET);
    await leave(DRY);
    await found(WET, null);
    await found(DRY, 'wall-set');
    const row = await rowOf(FLOOR);
    expect(row).toMatchObject({ left: 2, clean: 2, cleanWithEscapes: 0, firstPassWithEscapes: 0 });
    expect(row?.firstPassWithEscapesInterval.high).toBeCloseTo(0.6576, 4);
  });

  it('charges the station of the operation that fell short, not the one that found it', async () => {
    await leave(WET);
    await found(WET, 'wall-set');
    await small.tell('move', { serial: WET, to: 'rough-in' });
    expect(await rowOf('wall-set')).toMatchObject({ left: 1, clean: 1, cleanWithEscapes: 1 });
  });

  it('leaves punch items out and counts them by themselves', async () => {
    await small.tell('defect', {
      serial: WET,
      class: 'punch',
      component: 'deck',
      symptom: 'loose',
      foundAt: FLOOR,
      operation: 'decked',
    });
    await leave(WET);
    expect(await rowOf(FLOOR)).toMatchObject({ clean: 1, punch: 1, nonconformances: 0 });
  });

  it('is incomplete where the section left with work of the station open', async () => {
    await leave(WET);
    expect(await rowOf(FLOOR)).toMatchObject({ left: 1, complete: 0, completeShare: 0 });
  });

  it('rolls through as the product of the stations', async () => {
    await found(WET, FLOOR);
    await leave(WET);
    await leave(DRY);
    const answer = await small.plant.asks.yieldByStation(ALL);
    const product = answer.rows.reduce((rolled, { firstPass }) => rolled * (firstPass ?? 1), 1);
    expect(answer.rolled).toBe(product);
    expect(answer.rolled).toBe(0.5);
  });

  it('is counted of some of the sections alone: a model, a way of building, a crew, a shift', async () => {
    await found(WET, FLOOR);
    await small.tell('work', { serial: DRY, operation: 'decked' });
    await leave(WET);
    await leave(DRY);
    const floor = async (filter: Parameters<typeof small.plant.asks.yieldByStation>[1]) => {
      const { rows } = await small.plant.asks.yieldByStation(ALL, filter);
      const { left, clean } = rows.find(({ station }) => station === FLOOR)!;
      return [left, clean];
    };
    expect(await floor({ model: 'Alder' })).toStrictEqual([2, 1]);
    expect(await floor({ model: 'alder' })).toStrictEqual([0, 0]);
    expect(await floor({ attribute: 'role', value: 'wet' })).toStrictEqual([1, 0]);
    expect(await floor({ attribute: 'role', value: 'we' })).toStrictEqual([0, 0]);
    expect(await floor({ crew: 'floor' })).toStrictEqual([1, 1]);
    expect(await floor({ leftFrom: '00:00', leftTo: '23:59' })).toStrictEqual([2, 1]);
    expect(await floor({ leftFrom: '23:59', leftTo: '00:00' })).toStrictEqual([0, 0]);
    const { passages } = await small.plant.asks.passages(FLOOR, 'left', ALL, {
      attribute: 'role',
      value: 'dry',
    });
    expect(passages.map(({ serial }) => serial)).toStrictEqual([DRY]);
  });

  it('is set beside another span, and two sections are too few to tell a change', async () => {
    await found(WET, FLOOR);
    await leave(WET);
    const answer = ROUTES.yield.answer.parse(
      await small.plant.asks.yieldByStation(ALL, {}, { from: '2026-01-01', to: '2026-01-31' }),
    );
    expect(answer.against).toStrictEqual({ from: '2026-01-01', to: '2026-01-31', rolled: null });
    expect(answer.rows.find(({ station }) => station === FLOOR)).toMatchObject({
      lossShare: null,
      against: { left: 0, firstPass: null, now: 'not-told-apart' },
    });
    expect(answer.models).toStrictEqual(['Alder']);
  });

  it('is told week by week, Monday first, cut to the span', async () => {
    await leave(WET);
    const trend = ROUTES.yieldTrend.answer.parse(
      await small.plant.asks.yieldTrend(FLOOR, { from: '2026-02-25', to: '2026-03-04' }),
    );
    expect(trend.points.map(({ from, to, left }) => [from, to, left])).toStrictEqual([
      ['2026-02-25', '2026-03-01', 0],
      ['2026-03-02', '2026-03-04', 1],
    ]);
  });

  it('has behind each figure the sections that make it up', async () => {
    await found(WET, FLOOR);
    await leave(WET);
    await leave(DRY);
    await found(DRY, 'wall-set');
    const behind = async (which: string): Promise<readonly string[]> =>
      ROUTES.passages.answer
        .parse(await small.plant.asks.passages(FLOOR, which, ALL))
        .passages.map(({ serial }) => serial)
        .sort();
    expect(await behind('left')).toStrictEqual([WET, DRY]);
    expect(await behind('nonconforming')).toStrictEqual([WET]);
    expect(await behind('escaped')).toStrictEqual([DRY]);
    expect(await behind('incomplete')).toStrictEqual([WET, DRY]);
  });

  it('has no row for a station nobody knows, and no sections either', async () => {
    expect(await rowOf('moon')).toBeUndefined();
    expect(await small.plant.asks.passages('moon', 'left', ALL)).toStrictEqual({ passages: [] });
    expect(
      (await small.plant.asks.yieldTrend('moon', { from: '2026-03-02', to: '2026-03-08' })).points,
    ).toMatchObject([{ left: 0, firstPass: null }]);
  });

  it('covers the 90 days up to the last day on record unless told otherwise', async () => {
    await leave(WET);
    expect(await small.plant.asks.yieldByStation(ALL)).toMatchObject({
      from: '2025-12-02',
      to: '2026-03-02',
    });
  });
});
