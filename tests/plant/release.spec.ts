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
const missing = async (serial: string): Promise<readonly string[]> =>
  (await small.plant.asks.sectionRelease(serial))?.missing.map(({ rule }) => rule) ?? [];

describe('a label', () => {
  it('goes on when nothing is missing any more, and the screen says the same before', async () => {
    await cable('C-1');
    await build(A);
    expect(await missing(A)).toStrictEqual(['stage-not-seen']);
    expect(await label(A, 'ABC 000 001')).toBe('refused');

    await seen(B);
    expect(await missing(A)).toStrictEqual([]);
    expect((await small.plant.asks.sectionRelease(A))?.ready).toBe(true);
    expect(await label(A, 'ABC 000 001')).toBe('affixed');
    expect(await small.typesOf(A)).toContain('LabelAffixed');
  });

  it('uses its number once, and is accounted for', async () => {
    await small.tell('labelSupply', { first: 'ABC000001', last: 'ABC000005' }, AGENCY);
    await cable('C-1');
    for (const serial of [A, B]) await build(serial);
    await seen(A);
    expect((await small.plant.asks.sectionRelease(A))?.nextLabel).toBe('ABC000001');
    await label(A, 'ABC000001');
    expect(await small.rejection('label', { serial: B, number: 'ABC000001' }, 'manager')).toMatchObject({
      code: 'label-already-used',
      pointer: '/number',
    });
    expect(await small.rejection('label', { serial: B, number: 'ABC000009' }, 'manager')).toMatchObject({
      code: 'label-not-received',
    });
    await small.tell('labelVoid', { reason: 'damaged' }, 'manager', { params: { number: 'ABC000002' } });
    expect(await small.rejection('label', { serial: B, number: 'ABC000002' }, 'manager')).toMatchObject({
      code: 'label-gone',
    });
    await small.tell('labelReclaim', {}, AGENCY, { params: { number: 'ABC000003' } });
    expect((await small.plant.asks.sectionRelease(B))?.nextLabel).toBe('ABC000004');
    expect((await small.plant.asks.labelLog()).counts).toStrictEqual({
      received: 5,
      unused: 2,
      used: 1,
      void: 1,
      reclaimed: 1,
      replaced: 0,
    });
    expect((await small.plant.asks.labelLog()).unaccounted).toStrictEqual([]);
  });

  it('that is damaged is replaced by another number, linked to the one it replaces', async () => {
    await small.tell('labelSupply', { first: 'ABC000001', last: 'ABC000005' }, AGENCY);
    await cable('C-1');
    await build(A);
    await seen(A);
    await label(A, 'ABC000001');
    const replaced = await small.tell(
      'labelReplacement',
      { serial: A, number: 'ABC000004', reason: 'damaged' },
      AGENCY,
    );
    expect(replaced.answer).toBe('affixed');
    const { labels } = await small.plant.asks.labelLog();
    expect(labels.find(({ number }) => number === 'ABC000001')).toMatchObject({
      standing: 'replaced',
      replacedBy: 'ABC000004',
      serial: A,
    });
    expect(labels.find(({ number }) => number === 'ABC000004')).toMatchObject({
      standing: 'used',
      serial: A,
    });
  });

  it('never goes on over a quarantined lot, whichever of the two is sent first in one breath', async () => {
    await cable('C-1');
    await build(A);
    await cable('C-2');
    await build(B);
    await seen(A);
    const quarantine = (lot: string): Promise<unknown> =>
      small.tell('quarantine', { reason: 'suspect-lot' }, 'manager', { params: { lot } });
    await Promise.all([label(A, 'ABC000001'), quarantine('C-1')]);
    await Promise.all([quarantine('C-2'), label(B, 'ABC000002')]);

    // Which of the two the writer takes first is its own affair; that the label is on and came second may not be.
    for (const serial of [A, B]) {
      const types = await small.typesOf(serial);
      const [affixed, held] = [types.indexOf('LabelAffixed'), types.indexOf('HoldPlaced')];
      expect(held).toBeGreaterThan(-1);
      expect(affixed === -1 || affixed < held).toBe(true);
    }
    await small.tell('lotRelease', {}, 'manager', { params: { lot: 'C-2' } });
    expect(await label(B, 'ABC000002')).toBe('affixed');
  });

  it('never goes on over a hold that is sent with it', async () => {
    await cable('C-1');
    for (const serial of [A, B]) await build(serial);
    await seen(A);
    const hold = (serial: string): Promise<unknown> =>
      small.tell('hold', { serial, reason: 'look-again' }, 'inspector');
    await Promise.all([label(A, 'ABC000001'), hold(A)]);
    await Promise.all([hold(B), label(B, 'ABC000002')]);
    for (const serial of [A, B]) {
      const types = await small.typesOf(serial);
      const [affixed, held] = [types.indexOf('LabelAffixed'), types.indexOf('HoldPlaced')];
      expect(affixed === -1 || affixed < held).toBe(true);
    }
  });
});

describe('the plate', () => {
  it('is dated by the last label, and names what is not there yet (24 CFR 3280.5, 3282.7(h))', async () => {
    await cable('C-1');
    for (const serial of [A, B, C]) await build(serial);
    await seen(A);
    await label(A, 'ABC000001');
    expect(await small.plant.asks.dataPlate(HOME)).toMatchObject({
      differs: [{ en: 'Date of manufacture' }, { en: 'Labels' }],
    });
    small.clock.now += 3 * 86_400_000;
    await label(B, 'ABC000002');
    await label(C, 'ABC000003');
    const plate = await small.plant.asks.dataPlate(HOME);
    expect(plate?.manufacturedOn).toBe('2026-03-05');
    expect(plate?.differs).toStrictEqual([]);
    const items = plate?.items ?? [];
    const says = Object.fromEntries(items.map(({ id, says: words }) => [id, words?.en]));
    expect(says['labels']).toBe('ABC 000 001, ABC 000 002, ABC 000 003');
    expect(says['wind']).toBe('wind zone I');
  });
});

describe('containment', () => {
  const found = async (): Promise<string> => {
    const told = await small.tell(
      'defect',
      { serial: A, component: 'branch-wire', symptom: 'pierced', operation: 'wired', foundAt: 'final' },
      AGENCY,
    );
    return String(told.events[0]?.position);
  };

  it('names every other section still in the plant that shares crew, shift, lot or design', async () => {
    await cable('C-1');
    await build(A);
    await build(B);
    await cable('C-2');
    await build(C);
    await found();
    const sharing = await small.plant.asks.sharing(A, 'wired', { from: null, to: null });
    const shares = Object.fromEntries(
      (sharing?.sections ?? []).map(({ serial, shares: by }) => [serial, by] as const),
    );
    expect(shares[B]).toStrictEqual(['crew', 'shift', 'lot', 'design']);
    expect(shares[C]).toStrictEqual(['crew', 'shift', 'design']);

    await small.tell('shipment', { serial: B });
    const later = await small.plant.asks.sharing(A, 'wired', { from: null, to: null });
    expect(later?.sections.map(({ serial }) => serial)).toStrictEqual([C]);
  });

  it('holds each, follows each to inspected and released, and finds the same again', async () => {
    await cable('C-1');
    for (const serial of [A, B, C]) await build(serial);
    await seen(A);
    const key = 'the-defect';
    await small.tell(
      'defect',
      { serial: A, component: 'branch-wire', symptom: 'pierced', operation: 'wired', foundAt: 'final' },
      AGENCY,
      { key },
    );
    await small.tell(
      'containment',
      {
        serial: A,
        defect: `${key}-0`,
        operation: 'wired',
        by: ['crew'],
        sections: [
          { serial: B, shares: ['crew'] },
          { serial: C, shares: ['crew'] },
        ],
      },
      'manager',
      { key: 'contain' },
    );
    expect(await label(B, 'ABC000001')).toBe('refused');
    const params = { containment: 'contain-0' };
    await small.tell('containedLook', { serial: B, found: false }, 'inspector', { params });
    await small.tell('containedLook', { serial: C, found: true }, 'inspector', { params, key: 'look-c' });
    const standing = async (): Promise<readonly string[]> =>
      (await small.plant.asks.containments()).containments[0]?.sections.map((one) => one.standing) ?? [];
    expect(await standing()).toStrictEqual(['clear', 'found']);
    expect(await label(B, 'ABC000001')).toBe('affixed');
    expect(await missing(C)).toStrictEqual(expect.arrayContaining(['defect-open', 'held']));

    const defect = { params: { defect: 'look-c-0' } };
    await small.tell('rework', { serial: C, crew: 'electrical' }, 'electrical-lead', defect);
    await small.tell('verification', { serial: C, accepted: true }, 'inspector', defect);
    await small.tell('release', { serial: C }, 'manager', { params: { hold: 'contain-2' } });
    expect(await standing()).toStrictEqual(['clear', 'released']);
    expect(
      await small.rejection('containedLook', { serial: B, found: true }, 'inspector', { params }),
    ).toMatchObject({ code: 'contained-clear-already' });
  });
});
