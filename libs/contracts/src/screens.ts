import { z } from 'zod';
import { FindingAnswer, HoldAnswer, Source, Words } from './shapes';

const Mark = z.enum(['proven', 'covered', 'open-at-places', 'due', 'waiting', 'held']);

/** One characteristic to record, with its requirement in words and codes. */
export const ValueToRecord = z.object({
  characteristic: z.string(),
  label: Words,
  kind: z.enum(['measure', 'count', 'choice', 'yes-no', 'text', 'date', 'derived']),
  unit: z.string().nullable(),
  unitSymbol: z.string().nullable(),
  required: z.string().describe('FEEL unary test: >= 7'),
  requiredSays: Words,
  test: z.unknown().describe('The compiled test, for judging on the tablet before it is sent'),
  choices: z.array(z.string()).optional(),
  from: z.enum(['entry', 'lot', 'instrument']),
  asked: z.enum(['always', 'where-any']),
  worstOf: z.number().int(),
  /** Where the worst is looked for, drawn by lot for this serial; or where a reading is asked for each. */
  lookAt: Words.optional(),
  grade: z.enum(['refuse', 'hold', 'note']),
  source: Source,
});

/** One operation of a section as the station screen shows it. */
export const OperationCard = z.object({
  operation: z.string(),
  name: Words,
  station: z.string(),
  crew: z.string(),
  entry: z.enum(['S', 'V', 'I', 'T']),
  mark: Mark,
  except: z.array(z.string()),
  /** It hides others: one asks before telling. */
  cover: z.boolean(),
  gate: z.boolean(),
  label: z.boolean(),
  hides: z.array(z.object({ operation: z.string(), name: Words, hidden: z.enum(['any', 'second', 'lift']) })),
  waitsFor: z.array(z.object({ operation: z.string(), name: Words, station: z.string() })),
  photo: z.enum(['always', 'sample', 'gauge', 'none']),
  instrument: z.string().nullable(),
  caution: Words.nullable(),
  /** Where the approved manual describes it, and the drawings it is built to. */
  builtBy: z.string().optional(),
  values: z.array(ValueToRecord),
  done: z
    .object({
      position: z.number().int(),
      by: z.string(),
      crew: z.string().nullable(),
      at: z.string(),
      proof: z.enum(['signed', 'seen', 'reconstructed']),
      values: z.array(
        z.object({ characteristic: z.string(), value: z.string(), unit: z.string().nullable() }),
      ),
      missing: z.array(z.string()),
    })
    .nullable(),
});

export const DefectCard = z.object({
  defect: z.string(),
  serial: z.string(),
  class: z.enum(['nonconformance', 'punch', 'shortage', 'record']),
  component: z.string(),
  symptom: z.string(),
  says: Words,
  place: z.string().nullable(),
  foundAt: z.string().nullable(),
  operation: z.string().nullable(),
  charged: z.string().nullable(),
  state: z.enum(['open', 'reworked', 'closed']),
  escaped: z.boolean(),
  recordedAt: z.string(),
  occurredAt: z.string(),
});

/** GET /api/sections/{serial}: the station screen's one read. */
export const SectionAnswer = z.object({
  serial: z.string(),
  home: z.string(),
  model: z.string(),
  sections: z.array(z.object({ serial: z.string(), role: z.string().nullable() })),
  stage: z.enum(['ordered', 'on-line', 'pulled', 'shipped']),
  station: z.string().nullable(),
  since: z.string().nullable(),
  label: z.string().nullable(),
  revision: z.number().int().nullable(),
  planDigest: z.string().nullable(),
  position: z.number().int().describe('Ledger position this answer is current to'),
  design: z.record(z.string(), z.string()),
  /** Design facts in words, those that matter at `at` first. */
  facts: z.array(z.object({ attribute: z.string(), value: z.string(), says: Words, matters: z.boolean() })),
  /** The station asked about (?at=), else where the section is. */
  at: z.string().nullable(),
  /** One sentence: what blocks this section here, if anything. */
  blocked: Words.nullable(),
  operations: z
    .array(OperationCard)
    .describe('Due or done at `at`, in working order; all of the plan when ?at=all'),
  carried: z.array(OperationCard).describe('Open work of earlier stations, carried along'),
  defects: z.array(DefectCard),
  holds: z.array(HoldAnswer),
  lots: z
    .array(z.object({ lot: z.string(), kind: z.string(), usable: z.boolean() }))
    .describe('Mounted at `at`'),
});

export const LineSection = z.object({
  serial: z.string(),
  home: z.string(),
  model: z.string(),
  role: z.string().nullable(),
  stage: z.enum(['ordered', 'on-line', 'pulled', 'shipped']),
  station: z.string().nullable(),
  since: z.string().nullable(),
  /** Why it was pulled off the line, while it is. */
  pulledFor: Words.nullable().optional(),
  holds: z.number().int(),
  /** The first open hold in words. */
  heldBy: Words.nullable(),
  openWork: z.number().int().describe('Operations of stations already left, still open'),
  defects: z.object({
    nonconformance: z.number().int(),
    punch: z.number().int(),
    shortage: z.number().int(),
    record: z.number().int(),
  }),
  label: z.string().nullable(),
  lastSays: Words.describe('What happened last'),
  lastAt: z.string(),
});
export const LineAnswer = z.object({ position: z.number().int(), sections: z.array(LineSection) });

export const HistoryEntry = z.object({
  position: z.number().int(),
  id: z.string().describe('UUIDv5 of ledger and position'),
  stream: z.string(),
  version: z.number().int(),
  type: z.string(),
  serial: z.string(),
  occurredAt: z.string(),
  recordedAt: z.string(),
  late: z.boolean(),
  actor: z.string(),
  /** Name of the person, where the reader may see it. */
  by: z.string(),
  station: z.string().nullable(),
  revision: z.number().int().nullable(),
  leaf: z.string().describe('SHA-256 of 0x00 and the stored bytes, hex'),
  corrects: z.number().int().nullable(),
  /** Signed by hand for this entry alone: what the signature stands for, how it was given, and when. */
  signature: z
    .object({ meaning: z.enum(['did', 'inspected', 'approved']), means: z.string(), at: z.string() })
    .nullable(),
  correctedBy: z.array(z.number().int()),
  says: Words,
  findings: z.array(FindingAnswer),
  note: z.string().nullable(),
  data: z.record(z.string(), z.unknown()),
});
/** In the order it happened; entries made late stand where they happened and say so. */
export const HistoryAnswer = z.object({
  home: z.string(),
  model: z.string(),
  sections: z.array(
    z.object({
      serial: z.string(),
      role: z.string().nullable(),
      stage: z.string(),
      label: z.string().nullable(),
    }),
  ),
  position: z.number().int(),
  entries: z.array(HistoryEntry),
});
export const HomesAnswer = z.object({
  homes: z.array(
    z.object({
      home: z.string(),
      model: z.string(),
      sections: z.array(z.string()),
      stage: z.string(),
      lastAt: z.string(),
      holds: z.number().int(),
    }),
  ),
  total: z.number().int().describe('Homes that match, of which `homes` are the latest').optional(),
});

/** GET /api/plant: what every screen needs once. */
export const PlantAnswer = z.object({
  name: z.string(),
  zone: z.string(),
  demonstration: z.boolean(),
  ledger: z.string(),
  revision: z.number().int().nullable(),
  governing: Words.describe('The sentence that stands wherever a limit is shown'),
  stations: z.array(
    z.object({
      id: z.string(),
      pos: z.number().int().nullable(),
      kind: z.enum(['line', 'shop', 'yard', 'site']),
      name: Words,
      lanes: z.array(z.string()),
      lotKinds: z.array(z.string()),
    }),
  ),
  crews: z.array(z.object({ id: z.string(), name: Words })),
  places: z.array(z.object({ id: z.string(), name: Words })),
  components: z.array(z.object({ id: z.string(), name: Words })),
  symptoms: z.array(z.object({ id: z.string(), name: Words })),
  /** Which symptoms a component is known to show, and which operations can cause it, likeliest first. */
  faults: z.array(z.object({ component: z.string(), symptom: z.string(), operations: z.array(z.string()) })),
  operations: z.array(z.object({ id: z.string(), name: Words, station: z.string() })),
  /** Reason codes for holds, pulls and corrections. */
  reasons: z.array(z.object({ id: z.string(), name: Words, for: z.array(z.string()) })).optional(),
  lotKinds: z.array(z.object({ id: z.string(), name: Words })).optional(),
  instrumentKinds: z.array(z.object({ id: z.string(), name: Words })).optional(),
  /** Design attributes with their values in words: a section's role among them. */
  /** Values a plan names in words, in both languages; one that is not listed stands as it is written. */
  texts: z.array(z.object({ id: z.string(), name: Words })).optional(),
  attributes: z
    .array(
      z.object({
        id: z.string(),
        name: Words,
        values: z.array(z.object({ value: z.string(), says: Words })),
      }),
    )
    .optional(),
});

export const Me = z.object({
  actor: z.string(),
  name: z.string(),
  roles: z.array(z.string()),
  crew: z.string().nullable(),
  stations: z.array(z.string()),
});
export const SignInRequest = z.strictObject({
  person: z.string().min(1).max(80),
  /** A PIN, or a password. */
  pin: z.string().min(4).max(512),
  /** Of a phone, or a recovery code, where they are asked for. */
  code: z.string().min(6).max(64).optional(),
});
export const SignInAnswer = z.object({ me: Me });
/** Who can sign in here by PIN. Names only; on the demonstration plant the PINs too. */
export const SignInsAnswer = z.object({
  people: z.array(
    z.object({
      person: z.string(),
      name: z.string(),
      roles: z.array(z.string()),
      pin: z.string().nullable(),
    }),
  ),
});
export const HealthAnswer = z.object({
  status: z.enum(['ready', 'starting', 'stepped-down']),
  ledger: z.string(),
  head: z.number().int(),
  engine: z.enum(['sqlite', 'postgres']),
});
/** Server-sent event `ledger`: id is the position, data this. */
export const StreamNews = z.object({
  position: z.number().int(),
  type: z.string(),
  stream: z.string(),
  serial: z.string().nullable(),
  station: z.string().nullable(),
  occurredAt: z.string(),
  says: Words,
});
