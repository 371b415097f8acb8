import { canonicalJson, floorDay } from '@libs/kernel';
import { serialOf } from '../unit-event';
import type { Count, Row, View } from '../view';
import { nextPassages } from './apply';
import { workedOut } from './passages';
import type { Passage } from './passages';
import { noPassages, pairedWith } from './unit-passages';
import type { ChargedDefect, UnitPassages } from './unit-passages';

/**
 * A unit's passages through the stations and the defects charged to them. Both in one detail, because whether a
 * defect escaped is a question of when its section left.
 */
export const passages: View<UnitPassages> = {
  name: 'passages',
  version: 6,
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
        mended: 'whole',
        punch: 'whole',
        shortages: 'whole',
        records: 'whole',
        model: 'text',
        crews: 'text',
        left_time: 'text',
      },
      // All that a chart reads of a section stands in the index: the rows themselves are not touched.
      indexes: [['station', 'left_day', 'left_at', 'serial', 'clean']],
    },
    // One row a unit, joined to its passages where somebody asks for one way of building.
    unit_design: { columns: { serial: 'text', design: 'text' }, indexes: [] },
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
        made_by: 'text',
        lots: 'text',
      },
      indexes: [['day', 'position'], ['serial'], ['charged', 'day'], ['state', 'class'], ['agency', 'day']],
    },
  },
  rows: (unit, key) => [
    {
      table: 'unit_design',
      key,
      cells: { serial: unit.serial, design: spelt(unit.design) },
    },
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
      parts: ['day', 'charged', 'class', 'component', 'symptom', 'operation', 'crew'],
      numbers: ['defects', 'quantity'],
    },
    // A defect counts for each lot recorded with the operation that fell short.
    defect_lot_count: {
      parts: ['day', 'charged', 'class', 'lot', 'component', 'symptom'],
      numbers: ['defects'],
    },
  },
  counts: (unit) => [
    ...workedOut(unit).passages.flatMap(yieldCount),
    ...Object.values(unit.defects).flatMap((defect) => [defectCount(defect), ...lotCounts(defect, unit)]),
  ],
};

/** A design changes seldom, and its unit with every entry that brings a lot. */
const designs = new WeakMap<UnitPassages['design'], string>();
const spelt = (design: UnitPassages['design']): string => {
  const text = designs.get(design) ?? canonicalJson(design);
  designs.set(design, text);
  return text;
};

const EVENTS: ReadonlySet<string> = new Set([
  'HomeOrdered',
  'SectionOrdered',
  'OrderChanged',
  'WorkRecorded',
  'TestRecorded',
  'WorkCorrected',
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

const passageRow = (passage: Passage, { serial, home, model, crews }: UnitPassages, key: string): Row => ({
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
    mended: passage.mended,
    punch: passage.punch,
    shortages: passage.shortages,
    records: passage.records,
    model,
    crews: listed(pairedWith(passage.station, crews)),
    left_time: passage.leftAt === null ? null : floorTime(passage.leftAt),
  },
});

/** Each word on a line of its own, the first and the last too: a word is found as `inList` has it. */
const listed = (words: readonly string[]): string => (words.length === 0 ? '' : inList(words.join('\n')));
export const inList = (word: string): string => `\n${word}\n`;

/** Hours and minutes as the floor's clock had them. */
const floorTime = (instant: string): string => instant.slice('2026-03-02T'.length, '2026-03-02T14:00'.length);

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
    made_by: defect.madeBy,
    lots: listed(lotsOf(defect, unit)),
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
    defect.madeBy ?? '',
  ],
  numbers: [1, defect.quantity],
});

const lotsOf = ({ operation }: ChargedDefect, { lots }: UnitPassages): readonly string[] =>
  operation === null ? [] : pairedWith(operation, lots);

const lotCounts = (defect: ChargedDefect, unit: UnitPassages): readonly Count[] => {
  const lots = lotsOf(defect, unit);
  return (lots.length === 0 ? [''] : lots).map((lot) => ({
    table: 'defect_lot_count',
    parts: [
      floorDay(defect.occurredAt),
      defect.charged ?? '',
      defect.class,
      lot,
      defect.component,
      defect.symptom,
    ],
    numbers: [1],
  }));
};
