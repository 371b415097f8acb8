import { ROUTES } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import { DRY, HOME, WET, openSmallPlant, orderDouble } from '../../support/small-plant';
import type { SmallPlant } from '../../support/small-plant';

describe('a section as its station screen asks for it', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
  });
  afterEach(() => small.clear());

  const section = async (serial: string, at: string | null = null): Promise<AnswerOf<'section'>> =>
    ROUTES.section.answer.parse(await small.plant.asks.section(serial, at));
  const markOf = (answer: AnswerOf<'section'>, operation: string): string | undefined =>
    answer.operations.find((card) => card.operation === operation)?.mark;

  it('is not known under a serial nobody ordered', async () => {
    expect(await small.plant.asks.section('T-999', null)).toBeUndefined();
  });

  it('is ordered, with its sisters and what would be asked of it, before it has started', async () => {
    expect(await section(WET)).toMatchObject({
      stage: 'ordered',
      revision: null,
      home: HOME,
      station: null,
      sections: [
        { serial: WET, role: 'wet' },
        { serial: DRY, role: 'dry' },
      ],
    });
    expect((await section(WET, 'all')).operations.length).toBeGreaterThan(40);
  });

  it('shows what is due at its station, and what was done there by whom', async () => {
    await small.tell('start', { serial: WET, at: 'chassis' });
    await small.tell('work', { serial: WET, operation: 'frame-staged' });
    const answer = await section(WET);
    expect(answer.at).toBe('chassis');
    expect(answer.operations.map(({ station }) => station)).toStrictEqual(
      answer.operations.map(() => 'chassis'),
    );
    expect(markOf(answer, 'frame-staged')).toBe('proven');
    expect(answer.operations.find(({ operation }) => operation === 'frame-staged')?.done).toMatchObject({
      by: 'Name of floor-lead',
      proof: 'signed',
    });
  });

  it('waits for what an operation hides, named with its station', async () => {
    await small.tell('start', { serial: WET, at: 'chassis' });
    const drywalled = (await section(WET, 'drywall')).operations.find(
      ({ operation }) => operation === 'drywalled',
    );
    expect(drywalled).toMatchObject({ mark: 'waiting', cover: true });
    expect(drywalled?.waitsFor).toContainEqual(
      expect.objectContaining({ operation: 'insulation-inspected', station: 'insulation' }),
    );
  });

  it('says in one sentence what stands in the way of a station, and nothing of the station’s own order', async () => {
    await small.tell('start', { serial: WET, at: 'chassis' });
    expect((await section(WET, 'drywall')).blocked?.en).toContain('“Drywalled”');
    expect((await section(WET, 'chassis')).blocked).toBeNull();
  });

  it('carries open work of earlier stations along', async () => {
    await small.tell('start', { serial: WET, at: 'chassis' });
    await small.tell('move', { serial: WET, to: 'floor' });
    const carried = (await section(WET)).carried.map(({ operation }) => operation);
    expect(carried).toContain('serial-stamped');
    expect(carried).not.toContain('decked');
  });

  it('puts the design facts that matter at the station first', async () => {
    const { facts } = await section(WET, 'roofing');
    const matters = facts.map((fact) => fact.matters);
    expect(matters.indexOf(false)).toBe(matters.filter(Boolean).length);
    expect(matters[0]).toBe(true);
    expect(facts.find(({ attribute }) => attribute === 'axles')?.says.en).toMatch(/: 4$/);
  });

  it('says the requirement of a value in words, with its source', async () => {
    const values = (await section(WET, 'all')).operations.flatMap((card) => card.values);
    expect(values.length).toBeGreaterThan(0);
    for (const { requiredSays, source } of values) {
      expect(requiredSays.en).not.toBe('');
      expect(source.row).toMatch(/:\d+$/);
    }
  });

  it('shows its holds and open defects until they are dealt with', async () => {
    await small.tell('start', { serial: WET, at: 'chassis' });
    const told = await small.tell(
      'defect',
      { serial: WET, component: 'deck', symptom: 'loose', foundAt: 'floor', operation: 'decked', hold: true },
      'inspector',
    );
    const held = await section(WET);
    expect(held.defects).toMatchObject([{ component: 'deck', state: 'open', charged: 'floor' }]);
    expect(held.holds).toHaveLength(1);
    expect(told.holds).toHaveLength(1);

    const defect = held.defects[0]?.defect ?? '';
    await small.tell('rework', { serial: WET }, 'floor-lead', { params: { defect } });
    expect((await section(WET)).defects).toMatchObject([{ state: 'reworked' }]);
    await small.tell('verification', { serial: WET, accepted: true }, 'inspector', { params: { defect } });
    expect(await section(WET)).toMatchObject({ defects: [], holds: [] });
  });

  it('names the lots mounted at the station, and says when one is past its day', async () => {
    await small.tell('lot', { lot: 'L-1', kind: 'wallboard', usableUntil: '2026-03-02' }, 'manager');
    await small.tell('mounting', { station: 'drywall', lot: 'L-1', kind: 'wallboard' }, 'drywall-lead');
    small.clock.now += 2 * 86_400_000;
    expect((await section(WET, 'drywall')).lots).toStrictEqual([
      { lot: 'L-1', kind: 'wallboard', usable: false },
    ]);
    expect((await section(WET, 'floor')).lots).toStrictEqual([]);
  });

  it('names the places to count at, drawn by lot for the serial, and what the work is built by', async () => {
    const cardOf = async (serial: string, operation: string) =>
      (await section(serial, 'all')).operations.find((card) => card.operation === operation);
    const [wet, dry] = [await cardOf(WET, 'decked'), await cardOf(DRY, 'decked')];
    const placesOf = (card: typeof wet) =>
      card?.values.find(({ characteristic }) => characteristic === 'edge-spacing')?.lookAt?.en ?? '';
    expect(placesOf(wet).split(', ')).toHaveLength(3);
    expect(placesOf(await cardOf(WET, 'decked'))).toBe(placesOf(wet));
    expect(placesOf(dry)).not.toBe(placesOf(wet));
    expect((await cardOf(WET, 'wired'))?.builtBy).toBe('QAM 4.3 (invented) · E-101');
    expect(await cardOf(WET, 'decked')).not.toHaveProperty('builtBy');
  });

  it('is a home at its site when asked for by the home’s serial', async () => {
    await small.tell('start', { serial: WET, at: 'chassis' });
    const home = await section(HOME);
    expect(home).toMatchObject({ serial: HOME, at: 'site' });
    expect(home.operations.map(({ station }) => station)).toStrictEqual(home.operations.map(() => 'site'));
    expect(home.operations.length).toBeGreaterThan(0);
  });
});
