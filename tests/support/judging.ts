import type {
  CompiledPlan,
  DoneWork,
  Entry,
  Hide,
  OpenDefect,
  OpenHold,
  PlannedOperation,
  PlannedStation,
  PlannedValue,
  Source,
  WorkState,
} from '@libs/judge';

/** Plans, states and entries for what the judge says of them: each test names only what it is about. */

export const SOURCE: Source = { kind: 'practice', reference: 'practice', row: 'covers.csv:2' };

const station = (id: string, pos: number | null, kind: PlannedStation['kind'] = 'line'): PlannedStation => ({
  id,
  pos,
  kind,
  name: { en: id, es: id },
  lanes: [],
});

export const STATIONS: readonly PlannedStation[] = [
  station('floor', 1),
  station('rough-in', 2),
  station('roof-shop', null, 'shop'),
  station('roof-set', 3),
  station('drywall', 4),
  station('final', 5),
  station('yard', null, 'yard'),
  station('site', null, 'site'),
];

export const operation = (id: string, change: Partial<PlannedOperation> = {}): PlannedOperation => ({
  id,
  station: 'rough-in',
  crew: 'electrical',
  entry: 'S',
  scope: 'section',
  name: { en: id, es: id },
  requires: [],
  expects: [],
  hides: [],
  values: [],
  photo: 'none',
  instrument: null,
  lots: [],
  caution: null,
  gate: false,
  label: false,
  signers: [],
  plain: null,
  ...change,
});

export const hides = (hidden: string, change: Partial<Hide> = {}): Hide => ({
  operation: hidden,
  hidden: 'any',
  otherFace: [],
  grade: 'refuse',
  source: SOURCE,
  ...change,
});

export const requires = (...operations: readonly string[]): PlannedOperation['requires'] =>
  operations.map((id) => ({ operation: id, source: SOURCE }));

export const value = (characteristic: string, change: Partial<PlannedValue> = {}): PlannedValue => ({
  characteristic,
  label: { en: characteristic, es: characteristic },
  kind: 'measure',
  unit: '[in_i]',
  test: { is: 'compare', op: '>=', number: '1.25' },
  required: '>= 1.25',
  grade: 'hold',
  source: SOURCE,
  from: 'entry',
  asked: 'always',
  worstOf: 1,
  ...change,
});

export const planOfOperations = (...operations: readonly PlannedOperation[]): CompiledPlan => ({
  revision: 1,
  digest: 'digest',
  design: {},
  stations: STATIONS,
  places: [],
  order: operations.map(({ id }) => id),
  operations: Object.fromEntries(operations.map((one) => [one.id, one])),
  enforced: true,
});

export const done = (change: Partial<DoneWork> = {}): DoneWork => ({
  proof: 'signed',
  except: [],
  values: [],
  actor: 'p-crew',
  crew: 'electrical',
  occurredAt: '2026-03-14T08:00:00.000-05:00',
  position: 1,
  missing: [],
  ...change,
});

export const stateOf = (
  work: WorkState['work'],
  open: { readonly defects?: readonly OpenDefect[]; readonly holds?: readonly OpenHold[] } = {},
): WorkState => ({ work, defects: open.defects ?? [], holds: open.holds ?? [] });

export const nothingDone = stateOf({});

export const entryOf = (operationId: string, change: Partial<Entry> = {}): Entry => ({
  operation: operationId,
  proof: 'signed',
  except: [],
  values: [],
  lots: [],
  instrument: null,
  photos: [],
  signer: { actor: 'p-lead', crew: 'electrical', roles: ['station-lead'] },
  station: null,
  occurredAt: '2026-03-14T09:00:00.000-05:00',
  ...change,
});

export const defect = (change: Partial<OpenDefect> = {}): OpenDefect => ({
  defect: 'd-1',
  class: 'nonconformance',
  operation: 'wired',
  place: null,
  component: 'branch-wire',
  symptom: 'pierced',
  station: 'rough-in',
  state: 'open',
  reworkedBy: null,
  ...change,
});

export const hold = (change: Partial<OpenHold> = {}): OpenHold => ({
  hold: 'h-1',
  reason: 'look-again',
  operation: 'wired',
  characteristic: null,
  defect: null,
  since: '2026-03-14T08:30:00.000-05:00',
  ...change,
});
