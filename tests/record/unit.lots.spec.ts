import { given, inches, onLine, recordWork, worked } from '../support/unit-spec';

describe('lots', () => {
  const cable = (lot: string, kind = 'plate') => ({
    lot,
    kind,
    usable: true,
    properties: [inches('thickness', '0.07')],
  });

  it('are inherited from the station the work belongs to', () => {
    given(...onLine())
      .when(recordWork('plated'), { mounted: [{ station: 'rough-in', lot: cable('P-1') }] })
      .records(worked('plated', { lots: ['P-1'] }));
  });

  it('mounted where the crew stood go before those of the operation’s own station', () => {
    const mounted = [
      { station: 'rough-in', lot: cable('P-1') },
      { station: 'drywall', lot: cable('P-2') },
    ];
    const [event] = given(...onLine())
      .when(recordWork('plated'), { mounted, station: 'drywall' })
      .events();
    expect(event?.data).toMatchObject({ lots: ['P-2'] });
  });

  it('scanned for this very section go before all that is mounted', () => {
    const mounted = [{ station: 'rough-in', lot: cable('P-1') }];
    given(...onLine())
      .when(recordWork('plated', { lots: ['P-3'] }), { mounted, scanned: [cable('P-3')] })
      .records(worked('plated', { lots: ['P-3'] }));
  });

  it('of a kind the operation does not use are not inherited', () => {
    const mounted = [{ station: 'floor', lot: cable('J-1', 'joist') }];
    given(...onLine())
      .when(recordWork('framed'), { mounted })
      .records(worked('framed'));
  });

  it('that are not usable make a nonconformance of the work', () => {
    const mounted = [{ station: 'rough-in', lot: { ...cable('P-1'), usable: false } }];
    given(...onLine())
      .when(recordWork('plated'), { mounted })
      .recordsTypes('WorkRecorded', 'DefectRecorded', 'HoldPlaced');
  });
});
