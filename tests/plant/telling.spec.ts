import { DRY, HOME, WET, openSmallPlant, orderDouble } from '../support/small-plant';
import type { SmallPlant } from '../support/small-plant';

describe('what a plant is told', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
  });
  afterEach(() => small.clear());

  it('orders a home with its sections in one commit', async () => {
    const answer = await orderDouble(small, 'T-200');
    expect(answer.events.map(({ type, stream }) => `${stream} ${type}`)).toStrictEqual([
      'home/T-200 HomeOrdered',
      'section/T-200A SectionOrdered',
      'section/T-200B SectionOrdered',
    ]);
  });

  it('judges all sections of a home by the revision its first section started with', async () => {
    const first = await small.tell('start', { serial: WET, at: 'chassis' });
    expect(first.events.map(({ type, stream }) => `${stream} ${type}`)).toStrictEqual([
      `home/${HOME} HomeStarted`,
      `section/${WET} SectionStarted`,
    ]);
    const second = await small.tell('start', { serial: DRY, at: 'chassis' });
    expect(second.events.map(({ type }) => type)).toStrictEqual(['SectionStarted']);
  });

  it('refuses drywall while the wire is not protected, and clears it once all it hides is proven', async () => {
    await small.tell('start', { serial: WET, at: 'chassis' });
    const asked = await small.tell('asking', { serial: WET, operation: 'drywalled' }, 'drywall-lead');
    expect(asked.answer).toBe('refused');
    console.log(JSON.stringify(asked, null, 1).slice(0, 3000));
    const told = await small.tell(
      'work',
      { serial: WET, operation: 'drywalled', values: [] },
      'drywall-lead',
    );
    console.log(JSON.stringify(told.holds.length), told.events.map((e) => e.type).join());
    const section = await small.plant.asks.section(WET, null);
    console.log(JSON.stringify(section).slice(0, 500));
    const so = await small.tell('signOff', { serial: WET, station: 'floor' }, 'floor-lead');
    console.log(so.events.map((e) => e.type).join());
  });
});
