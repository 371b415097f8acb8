import type { Example } from './example';
import type { RouteName } from './routes';

/** Names the file that later examples speak of. */
const FILE = '0199c2a0-7c1e-7d4a-9b5e-000000000031';
const HOME = 'X26-1';
const claim = { params: { claim: 'C-X1' } };
const file = { params: { determination: `${FILE}-0` } };

/** From a complaint to what was determined; sent after the story of the home, in this order. */
export const claimExamples = {
  claim: { params: { claim: 'C-1' } },
  trace: { params: { claim: 'C-1' } },
  exposure: { query: { claim: 'C-1', cause: 'electric-trimmed/every' } },
  determination: { params: { determination: 'file-0' } },
  delivery: {
    body: { home: HOME, retailer: 'retailer-1', hauler: 'hauler-1', installer: 'installer-1' },
  },
  complaint: { body: { claim: 'C-X1', receivedOn: '2026-11-02', source: 'owner', home: HOME } },
  dismissal: { params: { claim: 'C-2' }, body: { because: 'The breaker was off' } },
  claimOpening: { ...claim, body: { home: HOME, component: 'outlet', symptom: 'dead' } },
  asFound: { ...claim, body: { pointsTo: ['electric-trimmed'], speaksAgainst: ['x-use'] } },
  claimDecision: {
    ...claim,
    body: { severity: 'no-action', decidedOn: '2026-11-20', bases: 'Wear of years; nothing of ours' },
  },
  causeConfirmation: { ...claim, body: { cause: 'electric-trimmed/every' } },
  determinationOpening: { key: FILE, body: { claim: 'C-X1' } },
  initialDetermination: {
    ...file,
    body: { severity: 'defect', decidedOn: '2026-11-20', methods: ['iv'], bases: 'Records were read' },
  },
  agencyPosition: { ...file, body: { concurs: true, takenOn: '2026-11-21', reference: 'letter 88' } },
  notification: { ...file, body: { notifiedOn: '2026-11-20', reference: 'letter 90' } },
  classDetermination: {
    ...file,
    body: { decidedOn: '2026-11-23', homes: [HOME], methods: ['iv'], bases: 'One home had the lot' },
  },
  remedyPlan: { ...file, body: { submittedOn: '2026-11-24', reference: 'plan 1' } },
  planApproval: {
    ...file,
    body: { approvedOn: '2026-11-25', correctBy: '2027-01-15', reference: 'letter 91' },
  },
  remedy: { ...file, body: { home: HOME, how: 'corrected', doneOn: '2026-11-25' } },
  completion: { ...file, body: { reportedOn: '2026-11-25', reference: 'report 1' } },
  countingRule: { body: { lastDay: 'next-working-day', holidays: ['2026-12-25'] } },
} satisfies { readonly [name in RouteName]?: Example };

/** Beside the record: a file of many complaints in, a file of addresses out. */
export const claimFileExamples = {
  claimsFile: { body: { csv: 'received,source,home,words\n2026-11-03,owner,X26-1,It drips\n' } },
  exposureFile: { body: { claim: 'C-X1', cause: 'electric-trimmed/every', reason: 'Letters to owners' } },
} satisfies { readonly [name in RouteName]?: Example };
