import { ROUTES } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import { DRY, WET, openSmallPlant, orderDouble } from '../../support/small-plant';
import type { SmallPlant } from '../../support/small-plant';

const SPAN = { from: '2026-03-01', to: '2026-03-08' };
const FLOOR = 'floor';

/** Counting rules by hand; the charts' own figures are held to published examples in tests/reference. */
describe('the charts of a station', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    for (const serial of [WET, DRY]) {
      await small.tell('start', { serial, at: 'chassis' });
      await small.tell('move', { serial, to: FLOOR });
    }
    const defect = { component: 'deck', symptom: 'loose', foundAt: FLOOR, operation: 'decked' };
    await small.tell('defect', { serial: WET, ...defect }, 'inspector');
    for (const serial of [WET, DRY]) await small.tell('move', { serial, to: 'wall-set' });
  });
  afterEach(() => small.clear());

  const chart = async (station = FLOOR): Promise<AnswerOf<'stationChart'>> =>
    ROUTES.stationChart.answer.parse(await small.plant.asks.stationChart(station, SPAN));
  const at = { params: { station: FLOOR } };

  it('count week by week the sections that left with a nonconformance', async () => {
    const { weekly } = await chart();
    const filled = weekly.points.filter(({ left }) => left > 0);
    expect(
      filled.map(({ from, left, nonconforming, value }) => [from, left, nonconforming, value]),
    ).toStrictEqual([['2026-03-02', 2, 1, 0.5]]);
    expect(weekly.why).toBe('too-few-points');
  });

  it('score section by section, and say which budget the limit follows from', async () => {
    const { unit, budget } = await chart();
    expect(unit?.days).toMatchObject([{ day: '2026-03-02', left: 2, nonconforming: 1 }]);
    expect(unit?.plan.baseline).toMatchObject({ by: 'assumed', counted: { count: 1, of: 2 } });
    expect(budget).toMatchObject({ falseAlarmsPerMonth: 0.25, charts: 3, rules: 'few-counts' });
    expect(unit?.plan.unitsBetween).toBeGreaterThan(0);
  });

  it('say where a nonconformance was found, the field included', async () => {
    const late = { component: 'deck', symptom: 'loose', operation: 'decked' };
    small.clock.now += 86_400_000;
    await small.tell('defect', { serial: DRY, ...late, foundAt: null }, 'inspector');
    const { found } = await chart();
    expect(found).toMatchObject([
      { at: FLOOR, stationsLater: 0, count: 1, daysLater: null },
      { at: null, stationsLater: null, count: 1, daysLater: expect.closeTo(1, 2) },
    ]);
  });

  it('keep notes, and limits from the days a person named, with the reason', async () => {
    await small.tell('chartNote', { day: '2026-03-02', note: 'New nail gun' }, 'manager', at);
    await small.tell(
      'baseline',
      { from: '2026-03-02', to: '2026-03-06', note: 'Before the new gun' },
      'manager',
      at,
    );
    const { annotations, unit, weekly } = await chart();
    expect(annotations).toMatchObject([{ day: '2026-03-02', note: 'New nail gun' }]);
    expect(unit?.plan.baseline.by).toBe('person');
    expect(weekly.phases.at(-1)).toMatchObject({ note: 'Before the new gun' });
  });

  it('follow another budget, which makes each limit higher the less it bears', async () => {
    const before = (await chart()).unit?.plan.limit ?? 0;
    await small.tell('alarmBudget', { falseAlarmsPerMonth: '0.01', rules: 'western-electric' }, 'manager');
    const after = await chart();
    expect(after.budget).toMatchObject({ falseAlarmsPerMonth: 0.01, rules: 'western-electric' });
    expect(after.unit?.plan.limit).toBeGreaterThan(before);
  });

  it('are the quality manager’s to read: others set no baseline', async () => {
    const backwards = { from: '2026-03-06', to: '2026-03-02', note: 'x' };
    expect((await small.rejection('baseline', backwards, 'floor-lead', at)).code).toBe('not-allowed');
    expect((await small.rejection('baseline', backwards, 'manager', at)).code).toBe('baseline-backwards');
  });

  it('are told for all stations at a glance, in the order of the line', async () => {
    const { stations } = ROUTES.signals.answer.parse(await small.plant.asks.signals(SPAN));
    expect(stations.map(({ station }) => station)).toStrictEqual(['chassis', FLOOR, 'wall-shop']);
    expect(stations[1]).toMatchObject({ alarm: null, weeks: [{ left: 0 }, { left: 2, clean: 1 }] });
  });
});

describe('a station that gets worse', () => {
  it('raises an alarm that says since when, and waits for a cause', async () => {
    const small = await openSmallPlant();
    try {
      // Good for thirty days, then bad.
      for (let home = 0; home < 45; home += 1) await homeThroughFloor(small, home, home >= 30);
      const span = { from: '2026-03-01', to: '2026-04-20' };
      const { unit } = await small.plant.asks.stationChart(FLOOR, span);
      const alarm = firstOf(unit?.alarms);
      expect(alarm.change).toMatchObject({ since: '2026-04-01', before: { count: 0 } });
      expect(alarm.acknowledged).toBeNull();

      const body = { day: alarm.day, note: 'Worn gauge' };
      await small.tell('acknowledgement', body, 'manager', { params: { station: FLOOR } });
      const again = await small.plant.asks.signals(span);
      const floor = again.stations.find(({ station }) => station === FLOOR);
      expect(floor?.alarm).not.toBeNull();
      const told = firstOf((await small.plant.asks.stationChart(FLOOR, span)).unit?.alarms);
      expect(told.acknowledged).toMatchObject({ note: 'Worn gauge' });
    } finally {
      await small.clear();
    }
  });
});

/** Two sections a day through the station, each with a defect or none. */
const homeThroughFloor = async (small: SmallPlant, home: number, isBad: boolean): Promise<void> => {
  const name = `26-${String(1000 + home)}`;
  const defect = { component: 'deck', symptom: 'loose', foundAt: FLOOR, operation: 'decked' };
  await orderDouble(small, name);
  for (const serial of [`${name}A`, `${name}B`]) {
    await small.tell('start', { serial, at: 'chassis' });
    await small.tell('move', { serial, to: FLOOR });
    if (isBad) await small.tell('defect', { serial, ...defect }, 'inspector');
    await small.tell('move', { serial, to: 'wall-set' });
  }
  small.clock.now += 86_400_000;
};

const firstOf = <T>(list: readonly T[] | undefined): T => {
  const [first] = list ?? [];
  if (first === undefined) throw new Error('There is none');
  return first;
};
