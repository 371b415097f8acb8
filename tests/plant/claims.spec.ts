import { DRY, HOME, WET, openSmallPlant, orderDouble } from '../support/small-plant';
import type { SmallPlant } from '../support/small-plant';

/** From a complaint to a determination's file, told to a whole plant on a SQLite file. */
describe('a claim', () => {
  let small: SmallPlant;
  const opened = { section: WET, component: 'outlet', symptom: 'dead' };
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    for (const serial of [WET, DRY]) await small.tell('start', { serial, at: 'chassis' });
    const complaint = { claim: 'C-1', receivedOn: '2026-11-02', source: 'owner', home: HOME } as const;
    await small.tell('complaint', { ...complaint, words: 'the lamp stays dark', opened }, 'manager');
  });
  afterEach(() => small.clear());

  it('is kept as it was put, sealed in the record and in clear to who may read it', async () => {
    expect(await small.plant.asks.claim('C-1')).toMatchObject({
      standing: 'claim',
      home: HOME,
      section: WET,
      words: 'the lamp stays dark',
    });
  });

  it('is traced to what the fault map and the technician name', async () => {
    await small.tell('asFound', { pointsTo: ['electric-trimmed'] }, 'manager', { params: { claim: 'C-1' } });
    const trace = await small.plant.asks.trace('C-1');
    expect(trace?.candidates[0]?.cause.operation).toBe('electric-trimmed');
    expect(trace?.candidates[0]?.evidence.map(({ kind }) => kind)).toContain('report');
  });

  it('of a section of another home is refused, and nothing of it is kept', async () => {
    const wrong = { ...opened, section: 'X-9' };
    const body = {
      claim: 'C-2',
      receivedOn: '2026-11-02',
      source: 'owner',
      home: HOME,
      opened: wrong,
    } as const;
    expect(await small.rejection('complaint', body, 'manager')).toMatchObject({
      code: 'section-not-of-home',
    });
    expect(await small.plant.asks.claim('C-2')).toBeUndefined();
  });

  it('is determined on evidence that stays as it stood, by days that are due', async () => {
    const { determination } = await small.tell('determinationOpening', { claim: 'C-1' }, 'manager');
    const before = await small.plant.asks.determination(determination);
    await small.tell('asFound', { pointsTo: ['electric-trimmed'] }, 'manager', { params: { claim: 'C-1' } });
    const after = await small.plant.asks.determination(determination);
    expect(after?.trace).toStrictEqual(before?.trace);
    expect(after?.clocks[0]).toMatchObject({ due: '2026-12-02', section: '3282.404(a)(1)' });
    expect(await small.plant.asks.dueDays()).toContain('DTSTART;VALUE=DATE:20261202\r\n');
  });
});
