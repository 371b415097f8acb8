import type { Finding } from '@libs/judge';
import type { UnitEvent } from '@libs/record';
import fc from 'fast-check';

/**
 * Histories no plant would write, and all that one could: defects verified before they are found, moves from where the
 * section is not, withdrawals of what was never there, and every entry up to two days late or early.
 */
export type AnyEntry = { readonly serial: string; readonly occurredAt: string; readonly event: UnitEvent };

/** Members out of order on purpose: stored, they stand in another. */
const SHORTFALL: Finding = {
  rule: 'value-missing',
  grade: 'hold',
  class: 'record',
  station: 'rough-in',
  operation: 'wired',
  source: { row: 'values.csv:34', reference: '', kind: 'practice' },
};

const serial = fc.constantFrom('26-0001-A', '26-0001-B', '26-0002-A');
const station = fc.constantFrom('floor', 'rough-in', 'drywall');
const defectId = fc.constantFrom('d1', 'd2', 'd3');
const holdId = fc.constantFrom('h1', 'h2');
const operation = fc.constantFrom('wired', 'drywalled');
const kind = fc.constantFrom('nonconformance', 'punch', 'shortage', 'record');
const crew = fc.constantFrom('electrical', 'drywall', null);

const data = <T extends UnitEvent['type']>(type: T, fields: fc.Arbitrary<Omit<DataOf<T>, 'serial'>>) =>
  fc
    .tuple(serial, fields)
    .map(([of, rest]) => ({ type, data: { serial: of, ...rest } }) as unknown as UnitEvent);
type DataOf<T extends UnitEvent['type']> = Extract<UnitEvent, { readonly type: T }>['data'];

const anyEvent: fc.Arbitrary<UnitEvent> = fc.oneof(
  data('SectionStarted', fc.record({ home: fc.constant('26-0001'), at: station, revision: fc.constant(1) })),
  data(
    'SectionMoved',
    fc.record({
      from: fc.option(station),
      to: station,
      open: fc.subarray(['wired', 'drywalled']),
      shortages: fc.constant([]),
      complete: fc.boolean(),
      shops: fc.constantFrom(
        [],
        [{ station: 'wall-shop', since: '2026-03-02T06:00:00.000-06:00', complete: true }],
      ),
    }),
  ),
  data('SectionPulled', fc.record({ from: fc.option(station), reason: fc.constant('part-short') })),
  data('SectionReturned', fc.record({ to: station })),
  data('SectionShipped', fc.record({ findings: fc.constant([]) })),
  data(
    'DefectRecorded',
    fc.record({
      defect: defectId,
      class: kind,
      component: fc.constantFrom('box', 'board'),
      symptom: fc.constantFrom('loose', 'cracked'),
      place: fc.option(fc.constant('curb')),
      foundAt: fc.option(station),
      operation: fc.option(operation),
      charged: fc.option(station),
      photos: fc.constant([]),
      quantity: fc.integer({ min: 1, max: 3 }),
    }),
  ),
  data('ReworkDone', fc.record({ defect: defectId, crew })),
  data('DefectVerified', fc.record({ defect: defectId, accepted: fc.boolean() })),
  data(
    'DefectClosed',
    fc.record({ defect: defectId, how: fc.constantFrom('fitted', 'signed', 'withdrawn') }),
  ),
  data(
    'HoldPlaced',
    fc.record({
      hold: holdId,
      reason: fc.constant('value-out-of-limits'),
      operation: fc.option(operation),
      characteristic: fc.constant(null),
      defect: fc.option(defectId),
      finding: fc.constantFrom(undefined, SHORTFALL),
    }),
  ),
  data('HoldReleased', fc.record({ hold: holdId, how: fc.constantFrom('verified', 'decided') })),
  data(
    'WorkWithdrawn',
    fc.record({
      operation,
      reason: fc.constant('wrong-serial'),
      movedTo: fc.constant(null),
      holds: fc.subarray(['h1', 'h2']),
      defects: fc.subarray(['d1', 'd2', 'd3']),
    }),
  ),
  data(
    'WorkRecorded',
    fc.record({
      operation,
      proof: fc.constant('signed'),
      except: fc.constant([]),
      values: fc.constant([]),
      lots: fc.subarray(['L-2', 'L-1']),
      instrument: fc.constant(null),
      photos: fc.constant([]),
      crew,
      findings: fc.constant([]),
      missing: fc.constant([]),
      late: fc.boolean(),
    }),
  ),
  data(
    'SectionOrdered',
    fc.record({
      home: fc.constant('26-0001'),
      model: fc.constantFrom('Alder', 'Birch'),
      design: fc.constantFrom({ wind: 'II', role: 'wet' }, { role: 'dry', wind: 'I' }),
      sections: fc.constant([]),
    }),
  ),
  data('LabelAffixed', fc.record({ number: fc.constant('XYZ 123 456') })),
);

const minute = fc.integer({ min: 0, max: 2 * 24 * 60 - 1 }).map((minutes) => {
  const day = minutes >= 24 * 60 ? '03' : '02';
  const hour = String(Math.floor(minutes / 60) % 24).padStart(2, '0');
  return `2026-03-${day}T${hour}:${String(minutes % 60).padStart(2, '0')}:00.000-06:00`;
});

export const anyHistory: fc.Arbitrary<readonly AnyEntry[]> = fc.array(
  fc.record({ occurredAt: minute, event: anyEvent }).map(({ occurredAt, event }) => ({
    serial: (event.data as { serial: string }).serial,
    occurredAt,
    event,
  })),
  { minLength: 1, maxLength: 60 },
);
