import { openSmallPlant } from '../support/small-plant';
import type { SmallPlant } from '../support/small-plant';
import { LABEL_RULEBOOK } from '../support/label-rulebook';

/** A home of three sections on the smallest line there is: what happens between "something is wrong" and "it may leave". */
const HOME = 'L-1';
const [A, B, C] = [`${HOME}A`, `${HOME}B`, `${HOME}C`];
const AGENCY = 'agency-1';

let small: SmallPlant;

beforeEach(async () => {
  small = await openSmallPlant();
  const opener = { key: 'issue-labels', actor: 'manager', assurance: 'pin' } as const;
  const issued = await small.plant.issueRevision(LABEL_RULEBOOK, '2026-01-02T00:00:00.000-06:00', opener);
  if (!issued.ok) throw new Error(JSON.stringify(issued.problems));
  const person = { person: AGENCY, name: 'Vera', roles: ['agency-inspector'], crew: null, stations: [] };
  await small.plant.enroll(person, { ...opener, key: 'enroll-agency' });
  await small.tell(
    'home',
    {
      home: HOME,
      model: 'Alder',
      design: { wind: 'I' },
      sections: [{ serial: A }, { serial: B }, { serial: C }],
    },
    'manager',
  );
});
afterEach(async () => {
  await small.clear();
});

const cable = async (lot: string): Promise<void> => {
  await small.tell('lot', { lot, kind: 'cable' });
  await small.tell('mounting', { station: 'rough-in', lot, kind: 'cable' });
};

const build = async (serial: string): Promise<void> => {
  await small.tell('start', { serial, at: 'rough-in' });
  await small.tell(
    'work',
    { serial, operation: 'wired', station: 'rough-in', crew: 'electrical' },
    'electrical-lead',
  );
  await small.tell(
    'work',
    { serial, operation: 'boarded', station: 'drywall', crew: 'drywall' },
    'drywall-lead',
  );
  await small.tell('work', { serial, operation: 'proved', station: 'final', crew: 'quality' }, 'inspector');
  await small.tell('move', { serial, to: 'final' });
};
const seen = (serial: string): Promise<unknown> =>
  small.tell('stageSeen', { serial, station: 'rough-in' }, AGENCY);
const label = async (serial: string, number: string): Promise<string> =>
  (await small.tell('label', { serial, number, photos: ['0'.repeat(64)] }, 'manager')).answer;

describe('the inspection agency', () => {
  it('places and lifts its tag, notes what hangs on no section, and the plant answers in time', async () => {
    await small.tell('start', { serial: A, at: 'rough-in' });
    await small.tell('redTag', { serial: A, tag: 'R-1', rule: '3280.612(a)' }, AGENCY);
    const { holds } = await small.plant.asks.holds();
    expect(holds).toMatchObject([{ subject: A, redTag: 'R-1', goesBy: 'agency' }]);

    await small.tell(
      'observation',
      { about: 'storage', subject: 'rack 4', rule: 'manual 6.2', dueOn: '2026-03-01', note: 'too cold' },
      AGENCY,
      { key: 'note' },
    );
    const params = { observation: 'note-0' };
    expect((await small.plant.asks.agency()).observations).toMatchObject([
      { note: 'too cold', standing: 'open', overdue: true, by: 'Vera' },
    ]);
    expect(await small.rejection('observationClosing', { accepted: true }, AGENCY, { params })).toMatchObject(
      {
        code: 'observation-not-answered',
      },
    );
    await small.tell('observationAnswer', { note: 'moved inside' }, 'manager', { params });
    await small.tell('observationClosing', { accepted: true }, AGENCY, { params });
    expect((await small.plant.asks.agency()).observations).toMatchObject([
      { standing: 'closed', answers: [{ note: 'moved inside', by: 'Mara' }] },
    ]);
    await small.tell('redTagLifting', { serial: A }, AGENCY, { params: { tag: 'R-1' } });
    expect((await small.plant.asks.holds()).holds).toStrictEqual([]);
  });

  it('flags a station whose failures come again, and reports the month (24 CFR 3282.553)', async () => {
    await cable('C-1');
    await build(A);
    await build(B);
    await build(C);
    await small.tell(
      'home',
      { home: 'L-2', model: 'Fir', design: { wind: 'I' }, sections: [{ serial: 'L-2A' }] },
      'manager',
    );
    await build('L-2A');
    await seen('L-2A');
    expect(await label('L-2A', 'ABC000009')).toBe('affixed');
    const failure = { component: 'branch-wire', symptom: 'pierced', operation: 'wired', foundAt: 'final' };
    await small.tell('defect', { serial: A, ...failure }, AGENCY);
    expect((await small.plant.asks.agency()).repeated).toStrictEqual([]);
    await small.tell('defect', { serial: 'L-2A', ...failure }, AGENCY);
    expect((await small.plant.asks.agency()).repeated).toMatchObject([
      { station: 'rough-in', homes: 2, failures: 2 },
    ]);
    await small.tell('visit', { day: '2026-03-02', stations: ['rough-in'] }, AGENCY);
    expect(await small.plant.asks.agencyReport('2026-03')).toMatchObject({
      labelled: { single: 1, multi: 0, sections: 1 },
      homesWithFailures: 2,
      visits: [{ day: '2026-03-02', by: 'Vera' }],
    });
    expect((await small.plant.asks.agencyReport('2026-02')).homesWithFailures).toBe(0);
  });
});

describe('a station that is held', () => {
  it('starts nothing until it is released, and takes no fact away', async () => {
    await small.tell('start', { serial: A, at: 'rough-in' });
    await small.tell('stationHold', { station: 'rough-in', reason: 'look-again' }, 'inspector', { key: 'h' });
    const asked = await small.tell('asking', { serial: A, operation: 'wired' }, 'electrical-lead');
    expect(asked).toMatchObject({ answer: 'refused', findings: [{ rule: 'held', hold: 'h-0' }] });
    const told = await small.tell('work', { serial: A, operation: 'wired' }, 'electrical-lead');
    expect(told.events.map(({ type }) => type)).toContain('WorkRecorded');

    const params = { hold: 'h-0' };
    expect(
      await small.rejection('stationRelease', { station: 'rough-in' }, 'electrical-lead', { params }),
    ).toMatchObject({ code: 'not-allowed' });
    await small.tell('stationRelease', { station: 'rough-in' }, 'manager', { params });
    expect((await small.plant.asks.holds()).holds).toStrictEqual([]);
  });
});
