import { firstValueFrom } from 'rxjs';
import { DRY, WET, openSmallPlant, orderDouble } from '../../support/small-plant';
import type { SmallPlant } from '../../support/small-plant';

/** Streams inside are packed, so only what stands in the open is read: the count of pages, the tags, the language. */
describe('the weekly report', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    for (const serial of [WET, DRY]) {
      await small.tell('start', { serial, at: 'chassis' });
      await small.tell('move', { serial, to: 'floor' });
      await small.tell('move', { serial, to: 'wall-set' });
    }
  });
  afterEach(() => small.clear());

  it('has one page a station, tagged, in the language asked for', async () => {
    const { rows } = await small.plant.asks.yieldByStation({ from: null, to: null });
    const { to, bytes } = await small.plant.asks.weeklyReport(null, 'es');
    const pdf = Buffer.from(bytes).toString('latin1');
    expect(to).toBe('2026-03-02');
    expect(pdf.match(/\/Type \/Page\b(?!s)/g)).toHaveLength(rows.length);
    expect(pdf).toContain('/Marked true');
    expect(pdf).toContain('/Lang (es-US)');
  });

  it('is the same bytes for the same record', async () => {
    const [one, other] = [
      await small.plant.asks.weeklyReport(null, 'en'),
      await small.plant.asks.weeklyReport(null, 'en'),
    ];
    expect(Buffer.from(one.bytes).equals(Buffer.from(other.bytes))).toBe(true);
  });
});

/** A section after another with a nonconformance, until the chart cannot call it chance any more. */
describe('an alarm', () => {
  it('is open from the section that raised it until a person gives its cause, and is told once', async () => {
    const small = await openSmallPlant();
    const told: string[] = [];
    const listening = small.plant.alarmsOpened().subscribe(({ id }) => told.push(id));
    const through = async (n: number, bad: boolean): Promise<void> => {
      const home = `T-${n}`;
      await orderDouble(small, home);
      for (const serial of [`${home}A`, `${home}B`]) {
        await small.tell('start', { serial, at: 'chassis' });
        await small.tell('move', { serial, to: 'floor' });
        const defect = { component: 'deck', symptom: 'loose', foundAt: 'floor', operation: 'decked' };
        if (bad) await small.tell('defect', { serial, ...defect }, 'inspector');
        await small.tell('move', { serial, to: 'wall-set' });
      }
      small.clock.now += 86_400_000;
    };
    for (let n = 200; n < 225; n += 1) await through(n, false);
    expect(await small.plant.asks.openAlarms()).toStrictEqual([]);
    for (let n = 225; n < 240; n += 1) await through(n, true);

    const open = await small.plant.asks.openAlarms();
    expect(open.map(({ station }) => station)).toStrictEqual(['floor']);
    const heard = await firstValueFrom(small.plant.alarmsOpened());
    expect(heard.id).toBe(open[0]?.id);

    const at = { params: { station: 'floor' } };
    await small.tell('acknowledgement', { day: open[0]?.day ?? '', note: 'Worn gauge' }, 'manager', at);
    expect(await small.plant.asks.openAlarms()).toStrictEqual([]);
    listening.unsubscribe();
    expect(new Set(told).size).toBe(told.length);
    await small.clear();
  }, 60_000);
});
