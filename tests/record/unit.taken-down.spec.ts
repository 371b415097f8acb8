import type { UnitCommand, UnitEvent } from '@libs/record';
import { SERIAL, given, inches, onLine, recordWork, stateAfter, worked, told } from '../support/unit-spec';
import type { Data } from '../support/unit-told';

const PLATE = { lot: 'P', kind: 'plate', usable: true, properties: [inches('thickness', '0.07')] };

describe('boards taken down', () => {
  const open = (change: Partial<Data<'OpenCover'>> = {}): UnitCommand =>
    told('OpenCover', { operation: 'boarded', places: [], also: [], defect: null, ...change });
  const built = [
    ...onLine('drywall'),
    worked('wired'),
    worked('plated'),
    worked('looked'),
    worked('boarded'),
  ];
  const laidOpen = (places: readonly string[]): UnitEvent => ({
    type: 'CoverOpened',
    data: {
      serial: SERIAL,
      operation: 'boarded',
      places,
      undone: ['boarded'],
      exposed: ['wired', 'plated'],
      defect: null,
      hold: null,
    },
  });

  it('make what they hid due again, and are due again themselves', () => {
    const [event] = given(...built)
      .when(open())
      .events();
    expect(event).toMatchObject({
      type: 'CoverOpened',
      data: { undone: ['boarded'], exposed: ['wired', 'plated'], hold: null },
    });
    const { work } = stateAfter([...built, laidOpen([])]);
    expect(Object.keys(work)).toStrictEqual(['looked']);
  });

  it('in one place leave the rest as it was proven', () => {
    const { work } = stateAfter([...built, laidOpen(['kitchen'])]);
    expect(work['wired']?.except).toStrictEqual(['kitchen']);
    expect(work['boarded']?.except).toStrictEqual(['kitchen']);
    expect(work['looked']?.except).toStrictEqual([]);
  });

  it('may not go up again over wiring nobody has looked at since', () => {
    given(...built, laidOpen(['kitchen']))
      .when(told('Ask', { operation: 'boarded', except: [] }))
      .recordsTypes('AskingRefused');
    given(...built, laidOpen(['kitchen']), worked('wired'), worked('plated'))
      .when(told('Ask', { operation: 'boarded', except: [] }))
      .recordsTypes('AskingCleared');
  });

  it('let wiring be told again without calling it told under cover', () => {
    const events = given(...built, laidOpen(['kitchen']))
      .when(recordWork('wired'))
      .events();
    expect(events[0]).toMatchObject({ type: 'WorkRecorded' });
    expect(JSON.stringify(events[0])).not.toContain('recorded-under-cover');
  });

  it('are not taken down where none are up', () => {
    given(...onLine('drywall'))
      .when(open())
      .isRejectedAs('cover-not-recorded');
  });

  it('after the label hold the section, until all of it is proven again', () => {
    const label: UnitEvent = { type: 'LabelAffixed', data: { serial: SERIAL, number: 'ABC000001' } };
    given(...built, label)
      .when(open())
      .recordsTypes('CoverOpened', 'HoldPlaced');
    const held = given(...built, label)
      .when(open())
      .events();
    const again = [worked('wired'), worked('plated')];
    given(...built, label, ...held, ...again)
      .when(recordWork('boarded', { crew: 'drywall' }))
      .recordsTypes('WorkRecorded', 'HoldReleased');
    given(...built, label, ...held, worked('wired'))
      .when(recordWork('plated'), {
        mounted: [{ station: 'rough-in', lot: PLATE }],
      })
      .recordsTypes('WorkRecorded');
  });
});
