import type { Example } from './example';
import type { RouteName } from './routes';

/** Keys that name what later examples speak of. */
export const RELEASE_KEYS = {
  open: '0199c2a0-7c1e-7d4a-9b5e-000000000011',
  observation: '0199c2a0-7c1e-7d4a-9b5e-000000000012',
  station: '0199c2a0-7c1e-7d4a-9b5e-000000000013',
  containment: '0199c2a0-7c1e-7d4a-9b5e-000000000014',
} as const;

const [WET, DRY] = ['X26-1-A', 'X26-1-B'];
const ASKED = 'H26-1001-A';

/** From found to released; sent after the story of the home, in this order. */
export const releaseExamples = {
  agencyReport: { query: { month: '2026-11' } },
  sectionRelease: { params: { serial: ASKED } },
  dataPlate: { params: { serial: 'H26-1001' } },
  sharing: { query: { serial: ASKED, operation: 'wired' } },
  openDefects: { query: { class: 'nonconformance' } },
  // The defect example is sent before, under a key of its own: these two want one that is open.
  cause: {
    params: { defect: `${RELEASE_KEYS.open}-0` },
    body: { serial: WET, operation: 'boxes-set', note: 'The box had moved before it was wired' },
  },
  disposition: {
    params: { defect: `${RELEASE_KEYS.open}-0` },
    body: { serial: WET, disposition: 'repair', detail: 'RD-04' },
  },
  punchList: {
    body: {
      serial: WET,
      foundAt: 'final',
      items: [
        { component: 'paint', symptom: 'scratched', place: 'kitchen' },
        { component: 'molding', symptom: 'gap' },
      ],
    },
  },
  punchSignature: { body: { serial: WET } },
  coverOpening: { body: { serial: WET, operation: 'boxes-set', places: ['kitchen'] } },
  stationHold: { key: RELEASE_KEYS.station, body: { station: 'drywall', reason: 'look-again' } },
  stationRelease: { params: { hold: `${RELEASE_KEYS.station}-0` }, body: { station: 'drywall' } },
  visit: { body: { day: '2026-11-24', stations: ['rough-in', 'drywall'], storage: true } },
  stageSeen: { body: { serial: WET, station: 'rough-in' } },
  redTag: { body: { serial: WET, tag: 'RT-0017', rule: '3280.612(a)' } },
  redTagLifting: { params: { tag: 'RT-0017' }, body: { serial: WET } },
  observation: {
    key: RELEASE_KEYS.observation,
    body: { about: 'storage', subject: 'rack 4', rule: 'manual 6.2', dueOn: '2026-12-04', note: 'Too cold' },
  },
  observationAnswer: {
    params: { observation: `${RELEASE_KEYS.observation}-0` },
    body: { note: 'Moved to the heated room' },
  },
  observationClosing: {
    params: { observation: `${RELEASE_KEYS.observation}-0` },
    body: { accepted: true },
  },
  labelSupply: { body: { first: 'XYZ 000 001', last: 'XYZ 000 060' } },
  labelVoid: { params: { number: 'XYZ000002' }, body: { reason: 'label-damaged' } },
  labelReclaim: { params: { number: 'XYZ000003' }, body: {} },
  labelReplacement: { body: { serial: WET, number: 'XYZ 000 004', reason: 'label-damaged' } },
  containment: {
    key: RELEASE_KEYS.containment,
    body: {
      serial: WET,
      operation: 'wired',
      by: ['crew'],
      sections: [{ serial: DRY, shares: ['crew'] }],
    },
  },
  containedLook: {
    params: { containment: `${RELEASE_KEYS.containment}-0` },
    body: { serial: DRY, found: false },
  },
  destination: { body: { home: 'X26-1', destination: 'Pine county (invented)' } },
} satisfies { readonly [name in RouteName]?: Example };
