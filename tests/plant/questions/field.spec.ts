import { ROUTES } from '@libs/contracts';
import { HOME, openSmallPlant, orderDouble } from '../../support/small-plant';

/**
 * Three homes, counted by hand: first claims at ages 10 and 40 days, one home without a claim watched for 60. Kaplan
 * and Meier (1958): past 10 days 2/3 are without a claim, past 40 days 1/3; every home is watched at both ages, so the
 * mean number of claims (Nelson 1988) is 1/3, and with a second claim of the first home 1.
 */
describe('claims from the field', () => {
  it('go by the age since somebody moved in, first claims and all of them', async () => {
    const small = await openSmallPlant();
    for (const home of [HOME, 'T-101', 'T-102']) {
      await orderDouble(small, home);
      await small.tell(
        'delivery',
        { home, retailer: null, hauler: null, installer: null, setOn: null, occupiedOn: '2026-01-01' },
        'manager',
      );
    }
    const claim = (id: string, home: string, receivedOn: string) =>
      small.tell('complaint', { claim: id, receivedOn, source: 'owner', home }, 'manager');
    await claim('C-1', HOME, '2026-01-11');
    await claim('C-2', HOME, '2026-02-10');
    await claim('C-3', 'T-101', '2026-02-10');
    for (const serial of [`${HOME}A`]) {
      await small.tell('start', { serial, at: 'chassis' });
      await small.tell('move', { serial, to: 'floor' });
      await small.tell('move', { serial, to: 'wall-set' });
    }

    const field = ROUTES.field.answer.parse(await small.plant.asks.field(20));
    expect(field).toMatchObject({ asOf: '2026-03-02', homes: 3, claims: 3 });
    expect(field.overall).toMatchObject({ watched: 3, claims: 1 });
    expect(field.overall.claimed).toBeCloseTo(1 / 3, 12);
    expect(field.overall.mean).toBeCloseTo(1 / 3, 12);

    const later = (await small.plant.asks.field(45)).overall;
    expect(later.claimed).toBeCloseTo(2 / 3, 12);
    expect(later.mean).toBeCloseTo(1, 12);
    // Sixty days after all moved in, nothing is said of ninety.
    expect((await small.plant.asks.field(90)).overall).toMatchObject({
      watched: 0,
      claimed: null,
      mean: null,
    });
    const none = (await small.plant.asks.field(5)).overall;
    expect(none.claimed).toBe(0);
    expect(none.interval.high).toBeGreaterThan(0.5);
    await small.clear();
  });
});
