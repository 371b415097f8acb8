import type { Example } from './example';
import { chartExamples } from './examples-charts';
import { claimExamples, claimFileExamples } from './examples-claims';
import { factorExamples } from './examples-factors';
import { linkExamples } from './examples-links';
import { releaseExamples } from './examples-release';
import type { RouteName } from './routes';

/** The first home of the demonstration, for questions; a home of the examples' own, for what is told. */
const ASKED = { home: 'H26-1001', section: 'H26-1001-A' } as const;
const TOLD = { home: 'X26-1', wet: 'X26-1-A', dry: 'X26-1-B' } as const;
/** Defects and holds are named after the key that led to them: an example can know the name beforehand. */
export const EXAMPLE_KEYS = {
  defect: '0199c2a0-7c1e-7d4a-9b5e-000000000001',
  punch: '0199c2a0-7c1e-7d4a-9b5e-000000000002',
  hold: '0199c2a0-7c1e-7d4a-9b5e-000000000003',
} as const;

const asks = {
  line: { query: { stage: 'on-line' } },
  section: { params: { serial: ASKED.section }, query: { at: 'all' } },
  kit: { params: { station: 'drywall' } },
  homes: { query: { search: ASKED.home } },
  history: { params: { serial: ASKED.home } },
  yield: { query: { by: 'station' } },
  yieldTrend: { query: { station: 'drywall' } },
  passages: { query: { station: 'drywall', which: 'nonconforming' } },
  defectCounts: { query: { by: 'component', class: 'nonconformance' } },
  defects: { query: { station: 'drywall' } },
  instrumentReach: { params: { instrument: 'INS-101' } },
  lotReach: { params: { lot: 'B-10001' } },
  stream: { query: { after: '0' } },
} satisfies { readonly [name in RouteName]?: Example };

const design = {
  stud: '2x6',
  wind: 'I',
  roof_load: 'South',
  thermal: '2',
  fuel: 'natural',
  gas_tubing: 'steel',
  duct: 'floor',
  uplift: 'straps',
  sheathing: 'yes',
  sheathing_path: 'exempt',
  roofing: 'shingle',
  attic_vent: 'natural',
  wall_retarder: 'inside-low',
  pan: 'site-built',
  dwv_test: 'water',
  dielectric: 'A',
  gasket: 'plant',
  mated_in_plant: 'no',
  hinged_roof: 'no',
  site_completion: 'no',
  wall_board: 'on-line',
  axles: '4',
  braked_axles: '2',
  joists: '2x8 at 16 in',
  floor_r: 'R-22',
  truss: 'T-114',
  attic_r: 'R-33',
  roof_strap_nails: '>= 7',
  shingle_nails: '>= 6',
  sheathing_schedule: 'S-2',
  alarms: '4',
  floor_lags: 'L-2',
};

/** One story in this order: a home is ordered, its wet half built (with what goes wrong put right), and shipped. */
const story = {
  home: {
    body: {
      home: TOLD.home,
      model: 'Alder',
      design,
      sections: [
        { serial: TOLD.wet, design: { role: 'wet' } },
        { serial: TOLD.dry, design: { role: 'dry' } },
      ],
    },
  },
  lot: {
    body: {
      lot: 'X-BATT-1',
      kind: 'batt',
      properties: [{ characteristic: 'retarder', value: '0.8', unit: '[perm_us]' }],
    },
  },
  mounting: { body: { station: 'insulation', lot: 'X-BATT-1', kind: 'batt' } },
  quarantine: { params: { lot: 'X-BATT-1' }, body: { reason: 'suspect-lot' } },
  lotRelease: { params: { lot: 'X-BATT-1' }, body: {} },
  unmounting: { body: { station: 'insulation', lot: 'X-BATT-1' } },
  calibration: {
    body: {
      instrument: 'X-GAUGE-1',
      kind: 'gas-gauge',
      properties: [{ characteristic: 'gauge-resolution', value: '0.1', unit: '[psi]' }],
      dueOn: '2027-03-02',
      inTolerance: true,
    },
  },
  qualification: { body: { person: 'lead', token: 'crew:quality', until: '2026-12-04' } },
  qualificationEnd: { body: { person: 'lead', token: 'crew:quality' } },
  orderChange: { body: { home: TOLD.home, design: { alarms: '5' }, note: 'Changed by the buyer' } },
  deviation: {
    body: {
      home: TOLD.home,
      operation: 'decked',
      reference: 'letter 26-118',
      allows: { what: 'value', characteristic: 'edge-spacing', required: '<= 7' },
    },
  },
  start: { body: { serial: TOLD.wet, at: 'chassis' } },
  move: { body: { serial: TOLD.wet, to: 'rough-in' } },
  work: {
    body: {
      serial: TOLD.wet,
      operation: 'wired',
      occurredAt: '2026-11-24T09:26:53.000-06:00',
      values: [{ characteristic: 'edge-distance', value: '1.5', unit: '[in_i]' }],
      crew: 'electrical',
      station: 'rough-in',
    },
  },
  correction: {
    body: {
      serial: TOLD.wet,
      operation: 'wired',
      values: [{ characteristic: 'edge-distance', value: '1.375', unit: '[in_i]' }],
      reason: 'misread',
    },
  },
  wrongSerial: { body: { recordedOn: TOLD.wet, belongsTo: TOLD.dry, operation: 'wired' } },
  asking: { body: { serial: TOLD.wet, operation: 'drywalled' } },
  signOff: {
    body: {
      serial: TOLD.wet,
      station: 'rough-in',
      except: [{ operation: 'wire-protected' }],
      crew: 'electrical',
    },
  },
  defect: {
    key: EXAMPLE_KEYS.defect,
    body: { serial: TOLD.wet, component: 'branch-wire', symptom: 'unprotected', foundAt: 'insulation' },
  },
  rework: { params: { defect: `${EXAMPLE_KEYS.defect}-0` }, body: { serial: TOLD.wet, crew: 'electrical' } },
  verification: {
    params: { defect: `${EXAMPLE_KEYS.defect}-0` },
    body: { serial: TOLD.wet, accepted: true },
  },
  // For this one the defect example is sent before, as a `punch` item under a key of its own.
  closing: { params: { defect: `${EXAMPLE_KEYS.punch}-0` }, body: { serial: TOLD.wet, how: 'signed' } },
  hold: { key: EXAMPLE_KEYS.hold, body: { serial: TOLD.wet, reason: 'look-again' } },
  release: { params: { hold: `${EXAMPLE_KEYS.hold}-0` }, body: { serial: TOLD.wet } },
  pull: { body: { serial: TOLD.wet, reason: 'waiting-for-part' } },
  return: { body: { serial: TOLD.wet, to: 'rough-in' } },
  label: { body: { serial: TOLD.wet, number: 'XYZ 000 001' } },
  shipment: { body: { serial: TOLD.wet } },
} satisfies { readonly [name in RouteName]?: Example };

const access = {
  signIn: { body: { person: 'p-112', pin: '5578' } },
  setUp: { body: { code: 'B7KD-93MX-TQ2W', name: 'Ada', password: 'plates before drywall, always' } },
  person: { body: { name: 'Bo', roles: ['station-lead'], crew: 'electrical', stations: ['rough-in'] } },
  personPin: { params: { person: 'p-112' }, body: {} },
  leaving: { params: { person: 'p-112' }, body: {} },
  erasure: { params: { person: 'p-112' }, body: {} },
  sessionEnd: { params: { session: '3f0a91c2d4e5' }, body: {} },
  token: { body: { role: 'machine', name: 'gauge at the test station' } },
  sample: { body: { from: '2026-10-01', to: '2026-10-31', level: 'II', limit: '2.5' } },
  tokenEnd: { params: { token: '3f0a91c2d4e5' }, body: {} },
  feedSubscription: {
    body: {
      kind: 'url',
      target: 'https://receiver.example/studbook',
      wants: { events: ['WorkRecorded', 'HoldPlaced'], alarms: true, checkpoints: true, clocks: false },
    },
  },
  feedEnd: { params: { subscription: '5b0f7f0e-3f0c-4b61-8d9e-7f1f6f7f2a10' }, body: {} },
  feedTest: { params: { subscription: '5b0f7f0e-3f0c-4b61-8d9e-7f1f6f7f2a10' }, body: {} },
  feedTryNow: { params: { subscription: '5b0f7f0e-3f0c-4b61-8d9e-7f1f6f7f2a10' }, body: {} },
  feedSendAgain: { params: { letter: '0c4e2a34-9d0c-4c62-a1f9-94a3f5b7d4c2' }, body: {} },
  feedDrop: { params: { letter: '0c4e2a34-9d0c-4c62-a1f9-94a3f5b7d4c2' }, body: {} },
} satisfies { readonly [name in RouteName]?: Example };

/** A rulebook's files are long: these two stand for all of them. */
const someFiles = {
  'plant.yaml': 'name: Quillmere Works\nzone: America/Chicago\n',
  'values.csv': 'operation,characteristic\n',
};
const agency = { reference: 'letter 26-114', approvedOn: '2026-03-02' };

const rulebook = {
  revisionPreview: { params: { serial: ASKED.home } },
  buildPlan: { params: { serial: ASKED.section } },
  examination: { body: { files: someFiles } },
  proposal: { body: { files: someFiles, base: 1, note: 'Closer lags in wind zone I, by letter 26-114' } },
  approval: { params: { proposal: 'a-proposal' }, body: { agency } },
  proposalReturn: { params: { proposal: 'a-proposal' }, body: { note: 'The letter names zone II too' } },
  orderPreview: { params: { serial: ASKED.home }, body: { design: { wind: 'II' } } },
  revisionApplication: { params: { serial: ASKED.home }, body: { revision: 2, note: 'By letter 26-114' } },
} satisfies { readonly [name in RouteName]?: Example };

export const EXAMPLES: { readonly [name in RouteName]?: Example } = {
  ...asks,
  ...story,
  ...releaseExamples,
  ...chartExamples,
  ...claimExamples,
  ...claimFileExamples,
  ...access,
  ...factorExamples,
  ...linkExamples,
  ...rulebook,
};
export const exampleOf = (route: string): Example | undefined => byName[route];
const byName: { readonly [route: string]: Example | undefined } = EXAMPLES;

/** What is told, in the order in which it makes sense. */
export const STORY = [
  ...Object.keys(story),
  ...Object.entries({ ...releaseExamples, ...chartExamples, ...claimExamples })
    .filter(([, example]) => 'body' in example)
    .map(([name]) => name),
];
