import type { CompiledPlan, Signer } from '@libs/judge';
import type { Codes, UnitFacts } from '@libs/record';
import { hides, operation, planOfOperations, requires, value } from './judging';

/** A line of nine operations: enough to cover, to inspect, to test, to label, and to go on at the site. */
export const PLAN: CompiledPlan = planOfOperations(
  operation('framed', { station: 'floor', crew: 'floor', entry: 'S' }),
  operation('wired', { entry: 'V', values: [value('edge'), value('plates', NO_PLATES_MISSING())] }),
  operation('plated', { entry: 'V', lots: ['plate'], values: [value('thickness', FROM_PLATE())] }),
  operation('looked', {
    crew: 'quality',
    entry: 'I',
    requires: requires('wired'),
    signers: ['crew:quality'],
  }),
  operation('trussed', { station: 'roof-shop', crew: 'roof', entry: 'S' }),
  operation('roofed', { station: 'roof-set', crew: 'roof', entry: 'S', expects: ['trussed'] }),
  operation('boarded', {
    station: 'drywall',
    crew: 'drywall',
    entry: 'S',
    requires: requires('looked'),
    hides: [hides('wired'), hides('plated')],
  }),
  operation('tested', {
    station: 'final',
    crew: 'quality',
    entry: 'T',
    instrument: 'gauge',
    values: [
      value('pressure', { unit: '[psi]', test: { is: 'compare', op: '>=', number: '3' }, required: '>= 3' }),
    ],
  }),
  operation('labelled', { station: 'final', crew: 'quality', entry: 'I', gate: true, label: true }),
  operation('joined', { station: 'site', crew: 'installer', scope: 'home', requires: requires('labelled') }),
);

function NO_PLATES_MISSING(): Parameters<typeof value>[1] {
  return {
    kind: 'count',
    unit: '1',
    test: { is: 'compare', op: '=', number: '0' },
    required: '0',
    grade: 'refuse',
  };
}

function FROM_PLATE(): Parameters<typeof value>[1] {
  return {
    from: 'lot',
    lotKind: 'plate',
    test: { is: 'compare', op: '>=', number: '0.0625' },
    required: '>= 0.0625',
  };
}

export const CODES: Codes = {
  operations: new Set([...PLAN.order, 'sheathed']),
  stations: new Set(PLAN.stations.map(({ id }) => id)),
  places: new Set(['kitchen', 'bath']),
  components: new Set(['outlet']),
  symptoms: new Set(['loose']),
  reasons: new Set(['look-again', 'misread', 'waiting-for-part']),
  likelyCause: () => 'wired',
};

export const LEAD: Signer = { actor: 'lead', crew: 'electrical', roles: ['station-lead'] };
export const INSPECTOR: Signer = { actor: 'inspector', crew: 'quality', roles: ['inspector'] };
export const MANAGER: Signer = { actor: 'manager', crew: 'quality', roles: ['quality-manager'] };

export const NOON = '2026-03-02T12:00:00.000-06:00';

export const FACTS: UnitFacts = {
  plan: PLAN,
  codes: CODES,
  revisionInForce: 1,
  homeRevision: null,
  signer: LEAD,
  idBase: 'key',
  occurredAt: NOON,
  receivedAt: NOON,
  skewMs: 0,
  station: null,
  mounted: [],
  scanned: [],
  instrument: null,
  ofSections: null,
  moved: null,
  agencySaw: ['rough-in'],
  unusable: [],
  heldStations: [],
};

export const SERIAL = 'T-1A';
