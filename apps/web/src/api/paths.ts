import type { RouteName } from '@libs/contracts';
import type { OFFICE_PATHS } from './office-paths';

/**
 * The paths again, as plain text: importing the routes themselves would bring their schemas into the browser.
 * A test holds this list against the contract.
 */
export const PATHS = {
  health: 'GET /api/health',
  signIns: 'GET /api/sign-ins',
  signIn: 'POST /api/sign-in',
  signOut: 'POST /api/sign-out',
  me: 'GET /api/me',
  setup: 'GET /api/setup',
  setUp: 'POST /api/setup',
  plant: 'GET /api/plant',
  line: 'GET /api/line',
  section: 'GET /api/sections/{serial}',
  kit: 'GET /api/stations/{station}/kit',
  homes: 'GET /api/homes',
  packet: 'GET /api/homes/{serial}/packet',
  history: 'GET /api/homes/{serial}/history',
  yield: 'GET /api/yield',
  yieldTrend: 'GET /api/yield/trend',
  passages: 'GET /api/yield/sections',
  defectCounts: 'GET /api/defects/counts',
  defects: 'GET /api/defects',
  stream: 'GET /api/stream',
  work: 'POST /api/work',
  asking: 'POST /api/askings',
  signOff: 'POST /api/sign-offs',
  wrongSerial: 'POST /api/corrections/serial',
  correction: 'POST /api/corrections/values',
  defect: 'POST /api/defects',
  rework: 'POST /api/defects/{defect}/rework',
  verification: 'POST /api/defects/{defect}/verification',
  closing: 'POST /api/defects/{defect}/closing',
  hold: 'POST /api/holds',
  release: 'POST /api/holds/{hold}/release',
  move: 'POST /api/moves',
  pull: 'POST /api/pulls',
  return: 'POST /api/returns',
  shipment: 'POST /api/shipments',
  label: 'POST /api/labels',
  start: 'POST /api/starts',
  home: 'POST /api/homes',
  lot: 'POST /api/lots',
  mounting: 'POST /api/mountings',
  claims: 'GET /api/claims',
  claim: 'GET /api/claims/{claim}',
  trace: 'GET /api/claims/{claim}/trace',
  exposure: 'GET /api/exposure',
  complaint: 'POST /api/claims',
  dismissal: 'POST /api/claims/{claim}/dismissal',
  claimOpening: 'POST /api/claims/{claim}/opening',
  asFound: 'POST /api/claims/{claim}/as-found',
  claimDecision: 'POST /api/claims/{claim}/decision',
  causeConfirmation: 'POST /api/claims/{claim}/cause',
  claimsFile: 'POST /api/claims/files',
  exposureFile: 'POST /api/exposure/files',
  delivery: 'POST /api/deliveries',
  determinations: 'GET /api/determinations',
  determination: 'GET /api/determinations/{determination}',
  dueDays: 'GET /api/due-days',
  determinationOpening: 'POST /api/determinations',
  initialDetermination: 'POST /api/determinations/{determination}/initial',
  classDetermination: 'POST /api/determinations/{determination}/class',
  agencyPosition: 'POST /api/determinations/{determination}/agency-position',
  notification: 'POST /api/determinations/{determination}/notification',
  remedyPlan: 'POST /api/determinations/{determination}/plan',
  planApproval: 'POST /api/determinations/{determination}/approval',
  remedy: 'POST /api/determinations/{determination}/remedies',
  completion: 'POST /api/determinations/{determination}/completion',
  countingRule: 'POST /api/determinations/counting',
  openDefects: 'GET /api/defects/open',
  cause: 'POST /api/defects/{defect}/cause',
  disposition: 'POST /api/defects/{defect}/disposition',
  punchList: 'POST /api/punch-lists',
  punchSignature: 'POST /api/punch-lists/signature',
  coverOpening: 'POST /api/cover-openings',
  holds: 'GET /api/holds',
  stationHold: 'POST /api/station-holds',
  stationRelease: 'POST /api/station-holds/{hold}/release',
  agency: 'GET /api/agency',
  agencyReport: 'GET /api/agency/report',
  visit: 'POST /api/agency/visits',
  stageSeen: 'POST /api/agency/stages',
  redTag: 'POST /api/red-tags',
  redTagLifting: 'POST /api/red-tags/{tag}/lifting',
  observation: 'POST /api/agency/observations',
  observationAnswer: 'POST /api/agency/observations/{observation}/answer',
  observationClosing: 'POST /api/agency/observations/{observation}/closing',
  releases: 'GET /api/releases',
  sectionRelease: 'GET /api/sections/{serial}/release',
  dataPlate: 'GET /api/homes/{serial}/data-plate',
  sharing: 'GET /api/containments/sharing',
  containments: 'GET /api/containments',
  containment: 'POST /api/containments',
  containedLook: 'POST /api/containments/{containment}/looks',
  destination: 'POST /api/destinations',
  site: 'GET /api/site',
  equipment: 'GET /api/equipment',
  instrumentReach: 'GET /api/instruments/{instrument}/reach',
  lotReach: 'GET /api/lots/{lot}/reach',
  quarantine: 'POST /api/lots/{lot}/quarantine',
  lotRelease: 'POST /api/lots/{lot}/release',
  calibration: 'POST /api/calibrations',
  qualification: 'POST /api/qualifications',
  signals: 'GET /api/quality/signals',
  buildPlan: 'GET /api/sections/{serial}/build-plan',
} as const satisfies { readonly [N in RouteName]?: string };

/** The routes a browser uses; the contract has more. */
export type WebRoute = keyof typeof PATHS | keyof typeof OFFICE_PATHS;

const known: Record<string, string> = { ...PATHS };
/** Those of the screens outside the stations come with their words: a tablet at a station waits for neither. */
export const knowPaths = (more: Readonly<Record<string, string>>): void => {
  Object.assign(known, more);
};

export const knowsPath = (route: WebRoute): boolean => Object.hasOwn(known, route);

/** Path parameters and query in one: what the path names goes into it, the rest becomes the query. */
export type Wanted = { readonly [name: string]: string | null | undefined };

const partsOf = (line = ''): readonly [string, string] => {
  const gap = line.indexOf(' ');
  return [line.slice(0, gap), line.slice(gap + 1)];
};

export const addressOf = (route: WebRoute, wanted: Wanted = {}): { method: string; path: string } => {
  const [method, template] = partsOf(known[route]);
  const query = new URLSearchParams();
  let path = template;
  for (const [name, value] of Object.entries(wanted)) {
    if (value === null || value === undefined || value === '') continue;
    const slot = `{${name}}`;
    if (path.includes(slot)) path = path.replace(slot, encodeURIComponent(value));
    else query.set(name, value);
  }
  const tail = query.toString();
  return { method, path: tail === '' ? path : `${path}?${tail}` };
};
