import { ROUTES } from '@libs/contracts';
import { isIn, isReceived, labelNumber, labelShown, labelText } from '@libs/record';
import { demonstrationRulebook } from '../support/demonstration-rulebook';
import { openSmallPlant } from '../support/small-plant';

/**
 * Goal: what the Federal rules say of labels, plates and clocks is what the record does. Each check names its section;
 * the texts were read from the eCFR mirror named in reference/regulations.md.
 */
describe('the certification label', () => {
  const accepted = (number: string): boolean =>
    ROUTES.label.body.safeParse({ serial: 'X-1', number }).success;

  // 24 CFR 3280.11(b)-(c): three letters and six digits, printed as ABC 000001 or ABC 000 001.
  it.each(['ABC 000001', 'ABC 000 001', 'ABC000001'])('is written %s (3280.11(b)-(c))', (number) => {
    expect(accepted(number)).toBe(true);
  });
  it.each(['AB 000001', 'ABCD000001', 'ABC 00001', 'ABC 0000011', 'abc 000001', 'ABC-000001', '000001'])(
    'is not %s',
    (number) => {
      expect(accepted(number)).toBe(false);
    },
  );

  // 24 CFR 3282.362(c)(2)(i)(D): sequential.
  it('follows the one before it (3282.362(c)(2)(i))', () => {
    const number = labelNumber('ABC000999');
    expect(number && labelText({ ...number, digits: number.digits + 1 })).toBe('ABC001000');
    expect(labelShown('ABC001000')).toBe('ABC 001 000');
    expect(isIn({ first: 'ABC000998', last: 'ABC001002' }, 'ABC001000')).toBe(true);
    expect(isIn({ first: 'ABC000998', last: 'ABC001002' }, 'ABD001000')).toBe(false);
    const runs = [{ first: 'ABC000001', last: 'ABC000060', at: '2026-03-02T08:00:00.000-06:00' }];
    expect([isReceived({ runs }, 'ABC000060'), isReceived({ runs }, 'ABC000061')]).toStrictEqual([
      true,
      false,
    ]);
  });

  // 24 CFR 3280.11(a): one on each transportable section; part 6.5 of regulations.md: failures corrected, then the label.
  it('is asked of every section by an operation that needs all others first (3282.362(c))', () => {
    const { operations } = demonstrationRulebook();
    const labelled = operations.find(({ id }) => id === 'labelled');
    expect(labelled).toMatchObject({ scope: 'section', entry: 'I' });
  });
});

describe('the data plate', () => {
  // 24 CFR 3280.5 and 3282.362(c)(3): nine items; the line of the plate that says each.
  const ITEMS: readonly (readonly [string, readonly string[]])[] = [
    ['plant name and address', ['plant-address']],
    ['serial number, model designation and date of manufacture', ['serial', 'model', 'made']],
    ['statement of compliance, in one of two forms', ['compliance', 'compliance-site']],
    ['certification label number of each section', ['labels']],
    ['major factory-installed equipment', ['equipment']],
    ['roof load zone and wind zone, and the warning of the coast', ['wind', 'roof-load', 'coast']],
    ['storm shutters', ['shutters']],
    ['design approval by', ['design-approval']],
    ['toxic substances', ['substances']],
  ];
  const { plate } = demonstrationRulebook();

  it.each(ITEMS)('has the item: %s (3280.5)', (_item, lines) => {
    const ids = plate.map(({ id }) => id);
    expect(lines.filter((line) => !ids.includes(line))).toStrictEqual([]);
  });

  it('says one of the two statements of compliance, never both (3280.5(c))', () => {
    for (const site of ['yes', 'no']) {
      const said = plate.filter(
        ({ id, when }) => id.startsWith('compliance') && (when['site_completion'] ?? site) === site,
      );
      expect(said).toHaveLength(1);
    }
  });
});

describe('the clocks of the inspection agency', () => {
  // 24 CFR 3282.362(c)(1): storage and test equipment at least monthly; a finding's answer is due by its day.
  it('run by the calendar of the plant, and a day is over only when the next has begun', async () => {
    const small = await openSmallPlant();
    const opener = { key: 'agency', actor: 'manager', assurance: 'pin' } as const;
    const person = { person: 'a-1', name: 'Vera', roles: ['agency-inspector'], crew: null, stations: [] };
    await small.plant.enroll(person, opener);
    const note = { about: 'manual', rule: 'manual 3.1', note: 'Old page', dueOn: '2026-03-02' } as const;
    await small.tell('observation', note, 'a-1');
    const overdue = async (): Promise<boolean | undefined> =>
      (await small.plant.asks.agency()).observations[0]?.overdue;
    // 05:59 UTC is 23:59 of the day before in Chicago.
    small.clock.now = Date.parse('2026-03-03T05:59:00.000Z');
    expect(await overdue()).toBe(false);
    small.clock.now = Date.parse('2026-03-03T06:01:00.000Z');
    expect(await overdue()).toBe(true);

    await small.tell('visit', { day: '2026-03-03', storage: true }, 'a-1');
    const { lastStorage, lastEquipment } = await small.plant.asks.agency();
    expect([lastStorage, lastEquipment]).toStrictEqual(['2026-03-03', null]);
    await small.clear();
  });
});
