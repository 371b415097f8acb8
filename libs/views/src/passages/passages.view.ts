import { floorDay } from '@libs/kernel';
import { serialOf } from '../unit-event';
import type { Count, Row, View } from '../view';
import { nextPassages } from './apply';
import { workedOut } from './passages';
import type { Passage } from './passages';
import { noPassages } from './unit-passages';
import type { ChargedDefect, UnitPassages } from './unit-passages';

/**
 * A unit's passages through the stations and the defects charged to them. Both in one detail, because whether a
 * defect escaped is a question of when its section left.
 */
export const passages: View<UnitPassages> = {
  name: 'passages',
  version: 4,
  keysOf: (event) => (EVENTS.has(event.type) ? [event.stream] : []),
  apply: (unit, event, key) => nextPassages(unit ?? noPassages(serialOf(key)), event),
  rowTables: {
    passage: {
      columns: {
        serial: 'text',
        home: 'text',
        station: 'text',
        entered_at: 'text',
        left_at: 'text',
        left_day: 'text',
        clean: 'whole',
        clean_with_escapes: 'whole',
        complete: 'whole',
        nonconformances: 'whole',
      },
      // All that a chart reads of a section stands in the index: the rows themselves are not touched.
      indexes: [['station', 'left_day', 'left_at', 'serial', 'clean']],
    },
    defect: {
      columns: {
        defect: 'text',
        serial: 'text',
        home: 'text',
        class: 'text',
        component: 'text',
        symptom: 'text',
        characteristic: 'text',
        place: 'text',
        found_at: 'text',
        operation: 'text',
        charged: 'text',
        state: 'text',
        escaped: 'whole',
        occurred_at: 'text',
        recorded_at: 'text',
        position: 'whole',
        day: 'text',
        severity: 'text',
        disposition: 'text',
        agency: 'whole',
      },
      indexes: [['day', 'position'], ['serial'], ['charged', 'day'], ['state', 'class'], ['agency', 'day']],
    },
  },
  rows: (unit, key) => [
    ...workedOut(unit).passages.map((passage) => passageRow(passage, unit, key)),
    ...Object.entries(unit.defects).map(([id, defect]) => defectRow(id, defect, unit, key)),
  ],
  counterTables: {
    station_yield: {
      parts: ['day', 'station'],
      numbers: [
        'sections',
        'clean',
        'clean_with_escapes',
        'complete',
        'mended',
        'nonconformances',
        'punch',
        'shortages',
        'records',
      ],
    },
    defect_count: {
      parts: ['day', 'charged', 'class', 'component', 'symptom', 'operation'],
      numbers: ['defects', 'quantity'],
    },
  },
  counts: (unit) => [
    ...workedOut(unit).passages.flatMap(yieldCount),
    ...Object.values(unit.defects).map(defectCount),
  ],
};

const EVENTS: ReadonlySet<string> = new Set([
  'HomeOrdered',
  'SectionOrdered',
  'SectionStarted',
  'SectionMoved',
  'SectionReturned',
  'SectionShipped',
  'DefectRecorded',
  'ReworkDone',
  'DefectVerified',
  'DefectClosed',
  'CauseRevised',
  'DefectDispositioned',
  'HoldPlaced',
  'HoldReleased',
  'WorkWithdrawn',
]);

const passageRow = (passage: Passage, { serial, home }: UnitPassages, key: string): Row => ({
  table: 'passage',
  key: `${key} ${passage.station}`,
  cells: {
    serial,
    home,
    station: passage.station,
    entered_at: passage.enteredAt,
    left_at: passage.leftAt,
    left_day: passage.leftAt === null ? null : floorDay(passage.leftAt),
    clean: Number(passage.clean),
    clean_with_escapes: Number(passage.cleanWithEscapes),
    complete: Number(passage.complete),
    nonconformances: passage.nonconformances,
  },
});

const defectRow = (id: string, defect: ChargedDefect, unit: UnitPassages, key: string): Row => ({
  table: 'defect',
  key: `${key} ${id}`,
  cells: {
    defect: id,
    serial: unit.serial,
    home: unit.home,
    class: defect.class,
    component: defect.component,
    symptom: defect.symptom,
    characteristic: defect.characteristic,
    place: defect.place,
    found_at: defect.foundAt,
    operation: defect.operation,
    charged: defect.charged,
    state: defect.state,
    escaped: Number(workedOut(unit).escaped.has(id)),
    occurred_at: defect.occurredAt,
    recorded_at: defect.recordedAt,
    position: defect.position,
    day: floorDay(defect.occurredAt),
    severity: defect.severity,
    disposition: defect.disposition,
    agency: Number(defect.agency),
  },
});

const yieldCount = (passage: Passage): readonly Count[] =>
  passage.leftAt === null
    ? []
    : [
        {
          table: 'station_yield',
          parts: [floorDay(passage.leftAt), passage.station],
          numbers: [
            1,
            Number(passage.clean),
            Number(passage.cleanWithEscapes),
            Number(passage.complete),
            passage.mended,
            passage.nonconformances,
            passage.punch,
            passage.shortages,
            passage.records,
          ],
        },
      ];

/** A part that is not known is counted under an empty name, so that sums still add up. */
const defectCount = (defect: ChargedDefect): Count => ({
  table: 'defect_count',
  parts: [
    floorDay(defect.occurredAt),
    defect.charged ?? '',
    defect.class,
    defect.component,
    defect.symptom,
    defect.operation ?? '',
  ],
  numbers: [1, defect.quantity],
});
