import { accept } from '@libs/kernel';
import type { StreamKind } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import type { Asking } from '@libs/ledger';
import type { UnitEvent } from '@libs/record';
import { askingOf } from './work';

/** Stations along the line, and operations at each: about as many as the demonstration plant has. */
const STATIONS = 15;
const WORK_AT_EACH = 5;
const DAY_MS = 86_400_000;
const START = Date.parse('2026-01-05T06:00:00.000Z');
/** Sections started a day. */
const A_DAY = 6;
/** At the least, so that enough lives are told. */
const EVENTS_OF_A_LIFE = 90;

type Happened = { readonly event: UnitEvent; readonly occurredAt: string };

/** What is recorded of one section from order to shipment: work, moves, a few defects on their way out. */
export const sectionLife = (n: number): readonly Happened[] => {
  const serial = `26-${String(n).padStart(5, '0')}-A`;
  const home = `26-${String(n).padStart(5, '0')}`;
  const began = START + Math.floor(n / A_DAY) * DAY_MS;
  let minute = 0;
  const then = (event: UnitEvent): Happened => {
    minute += 7;
    return { event, occurredAt: new Date(began + minute * 60_000).toISOString() };
  };
  const design = { role: 'wet', stud: '2x6', wind: 'II', roof_load: 'North', thermal: '3', sections: '2' };
  const life = [
    then({ type: 'SectionOrdered', data: { serial, home, model: 'Prairie 28', design, sections: [serial] } }),
    then({ type: 'SectionStarted', data: { serial, home, at: 'station-1', revision: 1 } }),
  ];
  for (let station = 1; station <= STATIONS; station += 1) {
    for (let task = 1; task <= WORK_AT_EACH; task += 1) life.push(then(work(serial, station, task)));
    if ((n + station) % 4 === 0) life.push(...mendedDefect(serial, n, station).map(then));
    life.push(then(station === STATIONS ? shipped(serial) : move(serial, station)));
  }
  return life;
};

/** The first so many events of whole sections' lives, in the order they happened. */
export const sectionLives = (size: number): readonly Happened[] =>
  Array.from({ length: Math.ceil(size / EVENTS_OF_A_LIFE) }, (_, n) => sectionLife(n))
    .flat()
    .sort((a, b) => (a.occurredAt < b.occurredAt ? -1 : 1))
    .slice(0, size);

const work = (serial: string, station: number, task: number): UnitEvent => ({
  type: 'WorkRecorded',
  data: {
    serial,
    operation: `operation-${station}-${task}`,
    proof: 'signed',
    except: [],
    values: [{ characteristic: 'nail-spacing', value: '6.25', unit: '[in_i]' }],
    lots: ['L-4471'],
    instrument: null,
    photos: [],
    crew: 'walls',
    findings: [],
    missing: [],
    late: false,
  },
  revision: 1,
  planDigest: '9f64a747e1b97f131fabb6b447296c9b6f0201e79fb3c5356e6c77e89b6a806a',
});

const move = (serial: string, from: number): UnitEvent => ({
  type: 'SectionMoved',
  data: {
    serial,
    from: `station-${from}`,
    to: `station-${from + 1}`,
    open: [],
    shortages: [],
    complete: true,
  },
});

const shipped = (serial: string): UnitEvent => ({ type: 'SectionShipped', data: { serial, findings: [] } });

const mendedDefect = (serial: string, n: number, station: number): readonly UnitEvent[] => {
  const defect = `${n}-${station}`;
  const at = `station-${station}`;
  return [
    {
      type: 'DefectRecorded',
      data: {
        serial,
        defect,
        class: 'nonconformance',
        component: `component-${n % 7}`,
        symptom: `symptom-${n % 5}`,
        place: null,
        foundAt: at,
        operation: `operation-${station}-1`,
        charged: at,
        photos: [],
        quantity: 1,
      },
    },
    { type: 'ReworkDone', data: { serial, defect, crew: 'walls' } },
    { type: 'DefectVerified', data: { serial, defect, accepted: true } },
  ];
};

const told: StreamKind<UnitEvent, null, UnitEvent, never, null> = {
  name: 'section',
  initial: null,
  decide: (event) => accept(event),
  evolve: () => null,
};

/** An asking that records just this. */
export const tellingOf = (run: string, n: number, { event, occurredAt }: Happened): Asking => {
  const { meta } = askingOf(run, n);
  const id = 'serial' in event.data ? event.data.serial : event.data.home;
  return {
    parts: [partOf({ kind: told, id, command: event, facts: () => null })],
    meta: { ...meta, occurredAt },
    content: String(n),
  };
};
