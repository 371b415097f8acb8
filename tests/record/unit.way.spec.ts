import type { UnitCommand, UnitEvent } from '@libs/record';
import {
  INSPECTOR,
  JUDGED_BY_PLAN,
  NOON,
  SERIAL,
  WIRED_WELL,
  given,
  givenBy,
  onLine,
  ordered,
  started,
  worked,
} from '../support/unit-spec';

const move = (to: string): UnitCommand => ({ type: 'MoveSection', data: { serial: SERIAL, to } });
type Moved = Extract<UnitEvent, { readonly type: 'SectionMoved' }>['data'];
const moved = (change: Partial<Moved>): UnitEvent => ({
  type: 'SectionMoved',
  data: {
    serial: SERIAL,
    from: 'floor',
    to: 'rough-in',
    open: [],
    shortages: [],
    complete: true,
    ...change,
  },
  ...JUDGED_BY_PLAN,
});
const start: UnitCommand = { type: 'StartSection', data: { serial: SERIAL, at: 'floor' } };
const pull: UnitCommand = { type: 'PullSection', data: { serial: SERIAL, reason: 'waiting-for-part' } };
const pulled: UnitEvent = {
  type: 'SectionPulled',
  data: { serial: SERIAL, from: 'floor', reason: 'waiting-for-part' },
};
const bring = (to: string): UnitCommand => ({ type: 'ReturnSection', data: { serial: SERIAL, to } });
const ship: UnitCommand = { type: 'ShipSection', data: { serial: SERIAL } };
const framed = worked('framed');
const wired = worked('wired', { values: WIRED_WELL });

describe('a section on its way', () => {
  it('starts by the revision in force', () => {
    given(ordered()).when(start, { plan: null }).records(started());
  });

  it('starts by the revision its home started with, whatever came since', () => {
    const [event] = given(ordered())
      .when(start, { plan: null, homeRevision: 1, revisionInForce: 2 })
      .events();
    expect(event?.data).toMatchObject({ revision: 1 });
  });

  it('starts once', () => {
    given(...onLine())
      .when(start)
      .isRejectedAs('section-already-started');
  });

  it('leaves a station complete when nothing of it is open', () => {
    given(...onLine(), framed)
      .when(move('rough-in'))
      .records(moved({}));
  });

  it('carries open work of this station and those before along', () => {
    given(...onLine())
      .when(move('rough-in'))
      .records(moved({ open: ['framed'], complete: false }));
    given(...onLine(), moved({ open: ['framed'], complete: false }), wired)
      .when(move('drywall'))
      .records(
        moved({
          from: 'rough-in',
          to: 'drywall',
          open: ['framed', 'plated', 'looked'],
          complete: false,
          shops: [{ station: 'roof-shop', since: NOON, complete: false }],
          findings: [
            {
              rule: 'station-skipped',
              grade: 'note',
              class: 'record',
              operation: 'roofed',
              station: 'roof-set',
              source: { kind: 'practice', reference: 'common practice, no published source', row: '' },
            },
          ],
        }),
      );
  });

  it('carries shortages along, and is not complete while one is charged to the station left', () => {
    const shortage: UnitEvent = {
      type: 'DefectRecorded',
      data: {
        serial: SERIAL,
        defect: 's',
        class: 'shortage',
        component: 'outlet',
        symptom: 'loose',
        place: null,
        foundAt: 'floor',
        operation: 'framed',
        charged: 'floor',
        photos: [],
        quantity: 1,
      },
    };
    given(...onLine(), framed, shortage)
      .when(move('rough-in'))
      .records(moved({ shortages: ['s'], complete: false }));
  });

  it('ends a shop’s passage with the move to the first line station that expects its work, once', () => {
    const early = '2026-03-01T09:00:00.000-06:00';
    const history = [
      [ordered(), {}],
      [started('rough-in'), {}],
      [worked('trussed', { crew: 'roof' }), { at: early }],
      [worked('trussed', { crew: 'roof' }), {}],
    ] as const;
    const [event] = givenBy(...history)
      .when(move('roof-set'))
      .events();
    expect(event?.data).toMatchObject({ shops: [{ station: 'roof-shop', since: early, complete: true }] });
    const back = givenBy(...history, [
      moved({ to: 'roof-set', shops: [{ station: 'roof-shop', since: early, complete: true }] }),
      {},
    ]);
    expect(back.when(move('drywall')).events()[0]?.data).not.toHaveProperty('shops');
  });

  it('moves nowhere by a move to where it stands', () => {
    given(...onLine())
      .when(move('floor'))
      .recordsNothing();
  });

  it('is pulled off the line, and returned', () => {
    given(...onLine())
      .when(pull)
      .records(pulled);
    given(...onLine(), pulled)
      .when(pull)
      .recordsNothing();
    given(...onLine(), pulled)
      .when(move('drywall'))
      .isRejectedAs('section-not-on-line');
    given(...onLine(), pulled)
      .when(bring('floor'))
      .records({ type: 'SectionReturned', data: { serial: SERIAL, to: 'floor' } });
    given(...onLine())
      .when(bring('floor'))
      .isRejectedAs('section-not-pulled');
  });

  it('ships with all that is open written down', () => {
    const [event] = given(...onLine('final'), framed, wired)
      .when(ship)
      .events();
    expect(event).toMatchObject({
      type: 'SectionShipped',
      data: {
        findings: ['plated', 'looked', 'trussed', 'roofed', 'boarded', 'tested', 'labelled'].map(
          (operation) => ({
            rule: 'left-with-open-work',
            operation,
          }),
        ),
      },
    });
  });

  it('ships once', () => {
    given(...onLine(), { type: 'SectionShipped', data: { serial: SERIAL, findings: [] } })
      .when(ship)
      .recordsNothing();
  });
});

describe('a label', () => {
  const label: UnitCommand = {
    type: 'AffixLabel',
    data: { serial: SERIAL, number: 'ABC123456', photos: [] },
  };

  it('is affixed, and the operation of affixing it is done with it', () => {
    given(...onLine('final'))
      .when(label, { signer: INSPECTOR })
      .records(
        { type: 'LabelAffixed', data: { serial: SERIAL, number: 'ABC123456' }, ...JUDGED_BY_PLAN },
        worked('labelled', { crew: 'quality' }),
      );
  });

  it('does not go on while a hold is open, and the asking is on record with what is missing', () => {
    const held: UnitEvent = {
      type: 'HoldPlaced',
      data: {
        serial: SERIAL,
        hold: 'h',
        reason: 'look-again',
        operation: null,
        characteristic: null,
        defect: null,
      },
    };
    const answers = given(...onLine('final'), held).when(label, { signer: INSPECTOR });
    answers.recordsTypes('LabelRefused');
    expect(answers.events()[0]).toMatchObject({
      data: { number: 'ABC123456', findings: [{ rule: 'held', grade: 'refuse', hold: 'h' }] },
    });
  });
});

describe('a section taken past a station, or away while it is held', () => {
  const rules = (event: UnitEvent | undefined): readonly unknown[] =>
    event?.type === 'SectionMoved'
      ? (event.data.findings ?? []).map(({ rule, station, grade }) => [rule, station, grade])
      : [];

  it('is moved all the same, and the record says which station it went past without work there', () => {
    const [event] = given(...onLine(), framed)
      .when(move('drywall'))
      .events();
    expect(rules(event)).toStrictEqual([
      ['station-skipped', 'rough-in', 'note'],
      ['station-skipped', 'roof-set', 'note'],
    ]);
  });

  it('goes past nothing where the work was done beforehand, nor when it comes back', () => {
    const [on] = given(...onLine(), framed, wired, moved({ from: 'floor', to: 'rough-in' }))
      .when(move('roof-set'))
      .events();
    const [back] = given(...onLine(), framed, moved({ to: 'drywall' }))
      .when(move('floor'))
      .events();
    expect([rules(on), rules(back)]).toStrictEqual([[], []]);
  });

  it('takes its holds along, and the move names them', () => {
    const held: UnitEvent = {
      type: 'HoldPlaced',
      data: {
        serial: SERIAL,
        hold: 'h-1',
        reason: 'waiting-for-part',
        operation: null,
        characteristic: null,
        defect: null,
      },
    };
    const [event] = given(...onLine(), framed, held)
      .when(move('rough-in'))
      .events();
    expect(rules(event)).toStrictEqual([['held', null, 'note']]);
  });
});

describe('an asking once a section has left', () => {
  it('is refused', () => {
    const shipped: UnitEvent = { type: 'SectionShipped', data: { serial: SERIAL, findings: [] } };
    const [event] = given(...onLine(), framed, shipped)
      .when({ type: 'Ask', data: { serial: SERIAL, operation: 'wired', except: [] } })
      .events();
    expect(event).toMatchObject({
      type: 'AskingRefused',
      data: { findings: expect.arrayContaining([expect.objectContaining({ rule: 'shipped-already' })]) },
    });
  });
});
