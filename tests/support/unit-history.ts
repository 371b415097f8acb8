import type { Recorded } from '@libs/kernel';
import type { UnitEvent } from '@libs/record';

/** Events of one section as the ledger would hold them, told from the floor's side: what, when, and nothing else. */
export type Told = { readonly event: UnitEvent; readonly at: string };

/** `at('08:30', event)`, on a day of the demonstration year. */
export const at = (time: string, event: UnitEvent, day = '2026-03-02'): Told => ({
  event,
  at: `${day}T${time}:00.000-06:00`,
});

export const SERIAL = '26-0417-A';

const places = { serial: SERIAL } as const;

export const ordered = (): UnitEvent => ({
  type: 'SectionOrdered',
  data: {
    ...places,
    home: '26-0417',
    model: 'Prairie 28',
    design: { role: 'wet', stud: '2x6' },
    sections: [SERIAL, '26-0417-B'],
  },
});

export const started = (station: string): UnitEvent => ({
  type: 'SectionStarted',
  data: { ...places, home: '26-0417', at: station, revision: 1 },
});

export const moved = (
  from: string,
  to: string,
  more: Partial<Extract<UnitEvent, { type: 'SectionMoved' }>['data']> = {},
): UnitEvent => ({
  type: 'SectionMoved',
  data: { ...places, from, to, open: [], shortages: [], complete: true, ...more },
});

export const pulled = (from: string): UnitEvent => ({
  type: 'SectionPulled',
  data: { ...places, from, reason: 'part-short' },
});
export const returned = (to: string): UnitEvent => ({ type: 'SectionReturned', data: { ...places, to } });
export const shipped = (): UnitEvent => ({ type: 'SectionShipped', data: { ...places, findings: [] } });

export const defect = (
  id: string,
  charged: string | null,
  more: Partial<Extract<UnitEvent, { type: 'DefectRecorded' }>['data']> = {},
): UnitEvent => ({
  type: 'DefectRecorded',
  data: {
    ...places,
    defect: id,
    class: 'nonconformance',
    component: 'box',
    symptom: 'loose',
    place: null,
    foundAt: charged,
    operation: 'boxes-set',
    charged,
    photos: [],
    quantity: 1,
    ...more,
  },
});

export const reworked = (id: string, crew: string | null = null): UnitEvent => ({
  type: 'ReworkDone',
  data: { ...places, defect: id, crew },
});
export const verified = (id: string, accepted = true): UnitEvent => ({
  type: 'DefectVerified',
  data: { ...places, defect: id, accepted },
});
export const closed = (id: string, how: 'fitted' | 'signed' | 'withdrawn'): UnitEvent => ({
  type: 'DefectClosed',
  data: { ...places, defect: id, how },
});

export const worked = (
  operation: string,
  more: Partial<Extract<UnitEvent, { type: 'WorkRecorded' }>['data']> = {},
): UnitEvent => ({
  type: 'WorkRecorded',
  data: {
    ...places,
    operation,
    proof: 'signed',
    except: [],
    values: [],
    lots: [],
    instrument: null,
    photos: [],
    crew: 'electrical',
    findings: [],
    missing: [],
    late: false,
    ...more,
  },
});

export const withdrawn = (
  operation: string,
  defects: readonly string[] = [],
  holds: readonly string[] = [],
): UnitEvent => ({
  type: 'WorkWithdrawn',
  data: { ...places, operation, reason: 'wrong-serial', movedTo: null, holds, defects },
});

export const held = (hold: string, of: string | null = null): UnitEvent => ({
  type: 'HoldPlaced',
  data: {
    ...places,
    hold,
    reason: 'value-out-of-limits',
    operation: 'wired',
    characteristic: null,
    defect: of,
  },
});
export const released = (hold: string): UnitEvent => ({
  type: 'HoldReleased',
  data: { ...places, hold, how: 'verified' },
});

/** As the ledger would hand them to a view, in the order they were entered. */
export const recorded = (told: readonly Told[]): readonly Recorded<UnitEvent>[] =>
  told.map(({ event, at: occurredAt }, index) => recordedAs(event, occurredAt, index + 1));

const recordedAs = (event: UnitEvent, occurredAt: string, position: number): Recorded<UnitEvent> => ({
  ...event,
  schema: `${event.type}/1`,
  ledger: '00000000-0000-4000-8000-000000000001',
  position,
  stream: `section/${SERIAL}`,
  version: position,
  occurredAt,
  recordedAt: '2026-03-31T12:00:00.000Z',
  actor: 'p-1',
  assurance: 'pin',
  device: null,
  deviceSeq: null,
  skewMs: null,
  via: 'tablet',
  station: null,
  key: `key-${position}`,
  keyIndex: 0,
  revision: null,
  planDigest: null,
});

/** A signature that is missing, found at another station than the one that owes it. */
export const unsigned = (hold: string, operation: string, charged: string): UnitEvent => ({
  type: 'HoldPlaced',
  data: {
    ...places,
    hold,
    reason: 'cover-hides-unproven',
    operation,
    characteristic: null,
    defect: null,
    finding: {
      rule: 'cover-hides-unproven',
      grade: 'refuse',
      class: 'record',
      operation,
      station: charged,
      source: { kind: 'practice', reference: 'common practice, no published source', row: 'covers.csv:2' },
    },
  },
});
