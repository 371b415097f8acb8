import type { AnswerOf } from '@libs/contracts';
import type { WordKey } from '../../words/words';

export type Claim = AnswerOf<'claim'>;
export type Trace = AnswerOf<'trace'>;
export type Candidate = Trace['candidates'][number];
export type Evidence = Candidate['evidence'][number];
export type Exposure = AnswerOf<'exposure'>;
export type ExposureMethod = Exposure['method'];

export const SOURCES = [
  'owner',
  'retailer',
  'installer',
  'technician',
  'agency',
  'state',
  'federal',
  'plant',
  'other',
] as const;
export type Source = (typeof SOURCES)[number];

const SOURCE_WORDS: Readonly<Record<Source, WordKey>> = {
  owner: 'claims.from-owner',
  retailer: 'claims.from-retailer',
  installer: 'claims.from-installer',
  technician: 'claims.from-technician',
  agency: 'claims.from-agency',
  state: 'claims.from-state',
  federal: 'claims.from-federal',
  plant: 'claims.from-plant',
  other: 'claims.from-other',
};
export const sourceWord = (source: string): WordKey =>
  SOURCE_WORDS[SOURCES.find((one) => one === source) ?? 'other'];

export const STANDINGS: Readonly<Record<Claim['standing'], WordKey>> = {
  new: 'claims.new',
  'no-failure': 'claims.no-failure',
  claim: 'claims.is-claim',
};

export const SEVERITY_WORDS = {
  'imminent-safety-hazard': 'due.imminent',
  'serious-defect': 'due.serious',
  defect: 'due.defect',
  noncompliance: 'due.noncompliance',
  'no-action': 'due.no-action',
} as const;
export type Severity = keyof typeof SEVERITY_WORDS;
export const severityWord = (severity: string): WordKey =>
  Object.hasOwn(SEVERITY_WORDS, severity) ? SEVERITY_WORDS[severity as Severity] : 'due.no-action';

const TO_DECIDE = ['quality-manager', 'administrator'];
/** Who answers for complaints; the inspection agency and auditors read. */
export const mayDetermine = ({ roles }: { readonly roles: readonly string[] }): boolean =>
  roles.some((role) => TO_DECIDE.includes(role));
