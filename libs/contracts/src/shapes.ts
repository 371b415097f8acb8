import { z } from 'zod';

/** Limits at the edge, each with its reason. */
export const LIMITS = {
  /** Longer than any serial, lot or label number seen on a line. */
  idLength: 64,
  /** A note is a sentence or two; long stories go into a file. */
  noteLength: 2_000,
  /** A sign-off asks for fewer; more is a runaway sender. */
  values: 400,
  /** A whole day's batch from one tablet still fits. */
  bodyBytes: 262_144,
  /** A phone's picture as it comes out of the camera; twelve megapixels at high quality stay below. */
  photoBytes: 16_777_216,
  /** A rulebook is sent whole: ten times the largest a plant is thought to have, 5 000 rows of values. */
  rulebookBytes: 16_777_216,
} as const;

/**
 * Codes and serials are looked up in objects all over: a name that every object has, such as `constructor`, is none of
 * ours. Found by the fuzzer.
 */
const isOurs = (text: string): boolean => !(text in Object.prototype);
const NOT_OURS = 'a name that no code can have';

/** Serial, lot, label and other identifiers: printed on labels, so letters, digits and a few joiners. */
export const Id = z
  .string()
  .min(1)
  .max(LIMITS.idLength)
  .regex(/^[A-Za-z0-9][A-Za-z0-9._:-]*$/, 'letters, digits, and . _ : - after the first character')
  .refine(isOurs, NOT_OURS);

/** What the ledger itself named, a defect or a hold: made of the idempotency key, so it may be longer. */
export const Reference = z.string().min(1).max(200).refine(isOurs, NOT_OURS);

/** Codes from the rulebook: operations, stations, places, characteristics. */
export const Code = z.string().min(1).max(LIMITS.idLength).refine(isOurs, NOT_OURS);

export const Note = z.string().min(1).max(LIMITS.noteLength);

export const Instant = z.iso.datetime({
  offset: true,
  message: 'a date and time with offset, such as 2026-03-14T09:26:53.000-05:00',
});
export const Day = z.iso.date();

export const Words = z.object({ en: z.string(), es: z.string() });

export const RecordedValue = z.strictObject({
  characteristic: Code,
  value: z
    .string()
    .min(1)
    .max(200)
    .describe('Measures and counts as decimal text (36.5); yes or no; a choice; text'),
  unit: z
    .string()
    .max(40)
    .nullable()
    .default(null)
    .describe('UCUM code, [in_i]; null where the kind has none'),
  place: Code.optional(),
});

export const Source = z.object({
  kind: z.enum(['published', 'practice', 'memory', 'design', 'derived']),
  reference: z.string(),
  row: z.string(),
});

export const Grade = z.enum(['refuse', 'hold', 'note']);
export const FindingClass = z.enum(['nonconformance', 'punch', 'shortage', 'record']);

/** A finding as a person or a program is told of it: codes and values, and one sentence in each language. */
export const FindingAnswer = z.object({
  rule: z.string(),
  grade: Grade,
  class: FindingClass,
  operation: z.string(),
  station: z.string().nullable(),
  entry: z.string().optional(),
  characteristic: z.string().optional(),
  required: z.string().optional(),
  recorded: z.string().optional(),
  unit: z.string().optional(),
  places: z.array(z.string()).optional(),
  hold: z.string().optional(),
  defect: z.string().optional(),
  source: Source,
  says: Words,
});

export const HoldAnswer = z.object({
  hold: z.string(),
  reason: z.string(),
  operation: z.string().nullable(),
  characteristic: z.string().nullable(),
  defect: z.string().nullable(),
  since: z.string(),
  says: Words,
});

/** What every telling is answered with. */
export const Recorded = z.object({
  position: z
    .number()
    .int()
    .describe('Ledger position of the first event recorded; the head when nothing was'),
  events: z.array(z.object({ position: z.number().int(), stream: z.string(), type: z.string() })),
  repeated: z.boolean().describe('The key came before with the same content: this is the first answer again'),
});

export const WorkAnswer = Recorded.extend({
  serial: z.string(),
  findings: z.array(FindingAnswer),
  /** Open holds of the section after this entry. */
  holds: z.array(HoldAnswer),
});

export const AskingAnswer = Recorded.extend({
  serial: z.string(),
  answer: z.enum(['cleared', 'refused']),
  findings: z.array(FindingAnswer),
});

/** RFC 9457. */
export const Problem = z.object({
  type: z.string(),
  title: z.string(),
  status: z.number().int(),
  detail: z.string().optional(),
  code: z.string().optional(),
  errors: z.array(z.object({ pointer: z.string(), detail: z.string() })).optional(),
});

/** Of every telling: when and where. */
export const when = {
  occurredAt: Instant.optional().describe(
    'When it happened, as the device says; left out: now, by the server',
  ),
  device: Id.optional(),
  deviceSeq: z.number().int().nonnegative().optional(),
  skewMs: z.number().int().optional(),
  via: z.enum(['tablet', 'paper', 'import', 'instrument']).default('tablet'),
  station: Code.optional().describe('Where it was really done; left out: unknown'),
};

export const WorkRequest = z.strictObject({
  serial: Id,
  operation: Code,
  proof: z.enum(['signed', 'seen', 'reconstructed']).default('signed'),
  except: z.array(Code).max(40).default([]).describe('Done except at these places'),
  values: z.array(RecordedValue).max(LIMITS.values).default([]),
  lots: z.array(Id).max(40).default([]),
  instrument: Id.nullable().default(null),
  photos: z
    .array(z.string().regex(/^[0-9a-f]{64}$/, 'SHA-256 in hex'))
    .max(20)
    .default([]),
  crew: Code.nullable().default(null),
  note: Note.optional(),
  ...when,
});

export const AskingRequest = z.strictObject({
  serial: Id,
  operation: Code.describe('The operation you ask to go on with: a cover, a start, a label'),
  except: z.array(Code).max(40).default([]),
  ...when,
});

export const SignOffRequest = z.strictObject({
  serial: Id,
  ...when,
  station: Code,
  except: z
    .array(z.strictObject({ operation: Code, places: z.array(Code).max(40).default([]) }))
    .max(200)
    .default([])
    .describe('All as planned, except: whole operations (no places) or places of them'),
  values: z
    .array(RecordedValue.extend({ operation: Code }))
    .max(LIMITS.values)
    .default([]),
  photos: z
    .array(z.string().regex(/^[0-9a-f]{64}$/))
    .max(20)
    .default([]),
  crew: Code.nullable().default(null),
  note: Note.optional(),
});

/** Put a wrong serial right: the entry leaves one section's history and enters the other's, in one commit. */
export const WrongSerialRequest = z.strictObject({
  recordedOn: Id,
  belongsTo: Id,
  operation: Code,
  note: Note.optional(),
  ...when,
});

/** Put written-down values right: the entry stays, its values are replaced, the old ones stay in sight. */
export const ValueCorrectionRequest = z.strictObject({
  serial: Id,
  operation: Code,
  except: z.array(Code).max(40).default([]),
  values: z.array(RecordedValue).max(LIMITS.values),
  reason: Code,
  note: Note.optional(),
  ...when,
});

export const DefectRequest = z.strictObject({
  serial: Id,
  class: FindingClass.default('nonconformance'),
  component: Code,
  symptom: Code,
  place: Code.nullable().default(null),
  foundAt: Code.nullable().default(null).describe('Station; null: in the field'),
  operation: Code.nullable()
    .default(null)
    .describe('The operation that caused it; null: as the fault map proposes'),
  photos: z
    .array(z.string().regex(/^[0-9a-f]{64}$/))
    .max(20)
    .default([]),
  quantity: z.number().int().min(1).max(10_000).default(1),
  hold: z.boolean().default(false),
  severity: z.enum(['minor', 'major', 'critical']).optional(),
  note: Note.optional(),
  ...when,
});
export const ReworkRequest = z.strictObject({
  serial: Id,
  crew: Code.nullable().default(null),
  note: Note.optional(),
  ...when,
});
export const VerificationRequest = z.strictObject({
  serial: Id,
  accepted: z.boolean(),
  note: Note.optional(),
  ...when,
});
export const ClosingRequest = z.strictObject({
  serial: Id,
  how: z.enum(['fitted', 'signed', 'withdrawn']),
  ...when,
});

export const HoldRequest = z.strictObject({
  serial: Id,
  reason: Code,
  operation: Code.nullable().default(null),
  note: Note.optional(),
  ...when,
});
export const ReleaseRequest = z.strictObject({ serial: Id, note: Note.optional(), ...when });

export const MoveRequest = z.strictObject({ serial: Id, to: Code, ...when });
export const PullRequest = z.strictObject({ serial: Id, reason: Code, note: Note.optional(), ...when });
export const ReturnRequest = z.strictObject({ serial: Id, to: Code, ...when });
export const ShipmentRequest = z.strictObject({ serial: Id, note: Note.optional(), ...when });
/** With its spaces or without: it is one number. */
export const LabelNumber = z
  .string()
  .regex(/^[A-Z]{3} ?\d{3} ?\d{3}$/, 'three letters and six digits (24 CFR 3280.11(b))');

export const LabelRequest = z.strictObject({
  serial: Id,
  number: LabelNumber,
  photos: z
    .array(z.string().regex(/^[0-9a-f]{64}$/))
    .max(20)
    .default([]),
  ...when,
});
export const StartRequest = z.strictObject({ serial: Id, at: Code, ...when });
export const HomeRequest = z.strictObject({
  home: Id,
  model: z.string().min(1).max(80),
  design: z
    .record(Code, z.string().max(80))
    .describe('Design attributes and details of the rulebook, without the role'),
  sections: z
    .array(z.strictObject({ serial: Id, design: z.record(Code, z.string().max(80)).default({}) }))
    .min(1)
    .max(9),
  destination: z.string().max(80).nullable().default(null),
  ...when,
});
export const LotRequest = z.strictObject({
  lot: Id,
  kind: Code,
  maker: z.string().max(80).nullable().default(null),
  properties: z.array(RecordedValue).max(40).default([]),
  usableUntil: Day.nullable().default(null),
  ...when,
});
export const MountingRequest = z.strictObject({ ...when, station: Code, lot: Id, kind: Code });
