import type { RecordedValue } from '@libs/judge';
import type { PacketEvent, PacketFile, PacketHome } from '../packet-home';
import type { Cell, Table } from './table';
import { csvOf } from './table';

/** One file a kind of fact, a heading in each, times as they were told with their offset. */
export const csvFiles = (home: PacketHome): readonly PacketFile[] =>
  Object.entries(TABLES).map(([name, table]) => ({ name: `csv/${name}.csv`, bytes: csvOf(table(home)) }));

const history = ({ events }: PacketHome): Table => ({
  columns: [
    ...['position', 'id', 'event', 'serial', 'happened', 'recorded', 'station', 'by', 'revision'],
    ...['says', 'dice', 'corrects', 'corrected by', 'note'],
  ],
  rows: events.map(({ event, id, type, serial, by, says, correctedBy, note }) => [
    ...[
      event.position,
      id,
      type,
      serial,
      event.occurredAt,
      event.recordedAt,
      event.station,
      by,
      event.revision,
    ],
    ...[says.en, says.es, event.corrects ?? null, correctedBy.join(' '), note],
  ]),
});

const values = ({ events, names }: PacketHome): Table => ({
  columns: [
    ...['position', 'serial', 'happened', 'operation', 'characteristic', 'name', 'place', 'value', 'unit'],
    ...['by', 'corrected by'],
  ],
  rows: events.flatMap(({ event, serial, by, correctedBy }) =>
    valuesIn(event.data).map(({ characteristic, place, value, unit }) => [
      ...[event.position, serial, event.occurredAt, textOf(event.data['operation']), characteristic],
      ...[
        names.characteristic(operationIn(event.data), characteristic).en,
        place ?? null,
        value,
        unit,
        by,
        correctedBy.join(' '),
      ],
    ]),
  ),
});

const findings = ({ events }: PacketHome): Table => ({
  columns: [
    ...['position', 'serial', 'happened', 'rule', 'grade', 'class', 'operation', 'station', 'characteristic'],
    ...['required', 'recorded', 'unit', 'places', 'source', 'says', 'dice'],
  ],
  rows: events.flatMap(({ event, serial, findings: found }) =>
    found.map((one): readonly Cell[] => [
      ...[
        event.position,
        serial,
        event.occurredAt,
        one.rule,
        one.grade,
        one.class,
        one.operation,
        one.station,
      ],
      ...[one.characteristic ?? null, one.required ?? null, one.recorded ?? null, one.unit ?? null],
      ...[one.places?.join(' ') ?? null, sourceOf(one.source), one.says.en, one.says.es],
    ]),
  ),
});

const ABOUT_DEFECTS = /^(Defect|Rework|Punch|Cause|RedTag|Cover)/;
const ABOUT_HOLDS = /^Hold/;
const ABOUT_ASKINGS = /^Asking/;

/** Events of one kind with their own fields, in the order in which the fields first appear. */
const eventsOf =
  (kind: RegExp) =>
  ({ events }: PacketHome): Table => {
    const chosen = events.filter(({ type }) => kind.test(type));
    const fields = [...new Set(chosen.flatMap(({ event }) => Object.keys(event.data)))].filter(
      (field) => !NOT_CELLS.has(field),
    );
    return {
      columns: ['position', 'event', 'happened', 'by', ...fields, 'note', 'says', 'dice'],
      rows: chosen.map((one) => [
        ...[one.event.position, one.type, one.event.occurredAt, one.by],
        ...fields.map((field) => textOf(one.event.data[field])),
        ...[one.note, one.says.en, one.says.es],
      ]),
    };
  };
/** Findings have a table of their own, and a note is shown in clear. */
const NOT_CELLS = new Set(['findings', 'finding', 'note', 'values']);

const TABLES: { readonly [name: string]: (home: PacketHome) => Table } = {
  history,
  values,
  findings,
  defects: eventsOf(ABOUT_DEFECTS),
  holds: eventsOf(ABOUT_HOLDS),
  askings: eventsOf(ABOUT_ASKINGS),
};

/** Values stand in the ledger as the contract checked them on their way in. */
const valuesIn = (data: PacketEvent['event']['data']): readonly RecordedValue[] =>
  Array.isArray(data['values']) ? known(data['values']) : [];
const known = (values: readonly unknown[]): readonly RecordedValue[] => values as readonly RecordedValue[];

const operationIn = ({ operation }: PacketEvent['event']['data']): string =>
  typeof operation === 'string' ? operation : '';

const textOf = (value: unknown): Cell => {
  if (value === null || value === undefined) return null;
  if (typeof value === 'string' || typeof value === 'number') return value;
  return Array.isArray(value) && value.every((one) => typeof one === 'string')
    ? value.join(' ')
    : JSON.stringify(value);
};

const sourceOf = (source: { readonly [field: string]: unknown }): Cell =>
  Object.values(source)
    .filter((part) => typeof part === 'string')
    .join(', ');
