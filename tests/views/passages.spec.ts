import { passages, workedOut } from '@libs/views';
import type { Passage, UnitPassages } from '@libs/views';
import {
  at,
  closed,
  defect,
  moved,
  pulled,
  recorded,
  returned,
  reworked,
  shipped,
  started,
  unsigned,
  verified,
  withdrawn,
} from '../support/unit-history';
import type { Told } from '../support/unit-history';

/** First-pass yield counted by hand from a few histories: common practice, no published source for the counting rule. */
const unitOf = (...told: Told[]): UnitPassages =>
  recorded(told).reduce<UnitPassages | undefined>(
    (unit, event) => passages.apply(unit, event, event.stream),
    undefined,
  )!;
const stay = (station: string, ...told: Told[]): Passage | undefined =>
  workedOut(unitOf(...told)).passages.find((passage) => passage.station === station);

const through = [
  at('08:00', started('floor')),
  at('10:00', moved('floor', 'rough-in')),
  at('14:00', moved('rough-in', 'drywall')),
];

describe('a section at a station', () => {
  it('is there from entering until it moves on', () => {
    expect(stay('rough-in', ...through)).toMatchObject({
      enteredAt: '2026-03-02T10:00:00.000-06:00',
      leftAt: '2026-03-02T14:00:00.000-06:00',
      complete: true,
      clean: true,
      cleanWithEscapes: true,
    });
    expect(stay('drywall', ...through)).toMatchObject({ leftAt: null });
  });

  it('is still there while it is pulled off the line', () => {
    expect(stay('rough-in', ...through.slice(0, 2), at('11:00', pulled('rough-in')))).toMatchObject({
      leftAt: null,
    });
  });

  it('is still there when it comes back to where it was pulled', () => {
    const back = [at('11:00', pulled('rough-in')), at('13:00', returned('rough-in'))];
    expect(stay('rough-in', ...through.slice(0, 2), ...back)).toMatchObject({
      enteredAt: '2026-03-02T10:00:00.000-06:00',
      leftAt: null,
    });
  });

  it('leaves the last station when it is shipped', () => {
    expect(stay('drywall', ...through, at('16:00', shipped()))).toMatchObject({
      complete: true,
      leftAt: '2026-03-02T16:00:00.000-06:00',
    });
  });

  it('counts once, by its first leaving, when it comes back to the same station', () => {
    const again = [
      at('15:00', moved('drywall', 'rough-in')),
      at('15:30', defect('d1', 'rough-in')),
      at('16:00', moved('rough-in', 'drywall')),
    ];
    expect(stay('rough-in', ...through, ...again)).toMatchObject({
      leftAt: '2026-03-02T14:00:00.000-06:00',
      clean: true,
      cleanWithEscapes: false,
    });
  });

  it('leaves incomplete when the move says so', () => {
    const open = at('14:00', moved('rough-in', 'drywall', { complete: false, open: ['wired'] }));
    expect(stay('rough-in', ...through.slice(0, 2), open)).toMatchObject({ complete: false, clean: true });
  });

  it('leaves a shop when the move that needs its product says so', () => {
    const set = at(
      '10:00',
      moved('floor', 'wall-set', {
        shops: [{ station: 'wall-shop', since: '2026-03-02T07:00:00.000-06:00', complete: true }],
      }),
    );
    expect(stay('wall-shop', at('08:00', started('floor')), set)).toMatchObject({
      enteredAt: '2026-03-02T07:00:00.000-06:00',
      leftAt: '2026-03-02T10:00:00.000-06:00',
    });
  });
});

describe('a nonconformance', () => {
  it('found before leaving spoils both yields of the station it is charged to, and no other', () => {
    const found = at('12:00', defect('d1', 'rough-in'));
    expect(stay('rough-in', ...through, found)).toMatchObject({ clean: false, cleanWithEscapes: false });
    expect(stay('floor', ...through, found)).toMatchObject({ clean: true, cleanWithEscapes: true });
  });

  it('found after leaving is an escape: clean as seen, not clean with escapes', () => {
    const found = at('15:00', defect('d1', 'rough-in', { foundAt: 'drywall' }));
    expect(stay('rough-in', ...through, found)).toMatchObject({ clean: true, cleanWithEscapes: false });
    expect(workedOut(unitOf(...through, found)).escaped).toStrictEqual(new Set(['d1']));
  });

  it('found in the field is an escape too', () => {
    const found = at('09:00', defect('d1', 'rough-in', { foundAt: null }), '2026-09-01');
    expect(stay('rough-in', ...through, found)).toMatchObject({ clean: true, cleanWithEscapes: false });
  });

  it('that is only a missing signature, of a station never passed, found where no device knows, is no escape', () => {
    const told = recorded([...through, at('13:00', unsigned('h1', 'braced', 'dispatch'))]).map((event) => ({
      ...event,
      station: null,
    }));
    const unit = told.reduce<UnitPassages | undefined>(
      (state, event) => passages.apply(state, event, event.stream),
      undefined,
    )!;
    expect(unit.defects['h1']).toMatchObject({ foundAt: null, charged: 'dispatch' });
    expect(workedOut(unit).escaped.size).toBe(0);
  });

  it('found before leaving and entered late was seen in time', () => {
    const late = at('13:59', defect('d1', 'rough-in'));
    expect(stay('rough-in', ...through, late)).toMatchObject({ clean: false });
    expect(workedOut(unitOf(...through, late)).escaped.size).toBe(0);
  });

  it('is undone when the entry that opened it is withdrawn, or the defect itself', () => {
    const found = at('12:00', defect('d1', 'rough-in'));
    for (const undone of [withdrawn('wired', ['d1']), closed('d1', 'withdrawn')]) {
      expect(stay('rough-in', ...through, found, at('15:00', undone))).toMatchObject({
        clean: true,
        cleanWithEscapes: true,
        nonconformances: 0,
      });
    }
  });

  it('still counts when it is mended and verified', () => {
    const mended = [
      at('12:00', defect('d1', 'rough-in')),
      at('12:30', reworked('d1')),
      at('13:00', verified('d1')),
    ];
    expect(stay('rough-in', ...through, ...mended)).toMatchObject({ clean: false, nonconformances: 1 });
  });

  it.each([
    ['mended by the crew that made it before leaving', 'electrical', '12:30', 1],
    ['mended by another crew', 'plumbing', '12:30', 0],
    ['mended after leaving', 'electrical', '14:30', 0],
  ])('%s has a count of its own', (_how, crew, time, mended) => {
    const found = at('12:00', defect('d1', 'rough-in', { madeBy: 'electrical' }));
    expect(stay('rough-in', ...through, found, at(time, reworked('d1', crew)))).toMatchObject({ mended });
  });

  it('is not mended when its rework is not accepted', () => {
    const refused = [
      at('12:00', defect('d1', 'rough-in')),
      at('12:30', reworked('d1')),
      at('13:00', verified('d1', false)),
    ];
    expect(stay('rough-in', ...through, ...refused)).toMatchObject({ mended: 0 });
  });
});

describe('punch items, shortages and missing sign-offs', () => {
  it('have counts of their own and spoil no first-pass yield', () => {
    const found = (['punch', 'shortage', 'record'] as const).map((kind) =>
      at('12:00', defect(kind, 'rough-in', { class: kind })),
    );
    expect(stay('rough-in', ...through, ...found)).toMatchObject({
      clean: true,
      cleanWithEscapes: true,
      punch: 1,
      shortages: 1,
      records: 1,
      nonconformances: 0,
    });
  });
});

describe('a signature found missing', () => {
  const found = at('13:00', unsigned('h1', 'wired', 'rough-in'));

  it('is counted against the record of the station that owes it, and against no yield', () => {
    expect(stay('rough-in', ...through, found)).toMatchObject({
      records: 1,
      clean: true,
      cleanWithEscapes: true,
    });
    expect(stay('drywall', ...through, found)).toMatchObject({ records: 0 });
  });

  it('is not counted once the entry that showed it is withdrawn', () => {
    const mended = at('13:30', withdrawn('drywalled', [], ['h1']));
    expect(stay('rough-in', ...through, found, mended)).toMatchObject({ records: 0 });
  });
});

describe('moves entered out of order', () => {
  const told = [
    at('08:00', started('floor')),
    at('14:00', moved('floor', 'drywall')),
    at('10:00', moved('drywall', 'rough-in')),
  ];

  it('stand where they happened', () => {
    expect(stay('floor', ...told)).toMatchObject({ leftAt: '2026-03-02T10:00:00.000-06:00', complete: true });
    expect(stay('rough-in', ...told)).toMatchObject({
      enteredAt: '2026-03-02T10:00:00.000-06:00',
      leftAt: '2026-03-02T14:00:00.000-06:00',
    });
  });

  it('leave a station of which no move says that it was complete as not known complete', () => {
    expect(stay('rough-in', ...told)).toMatchObject({ complete: false });
  });
});
