import { z } from 'zod';
import * as shapes from './shapes';
import { EXPOSURE_METHOD, Exposed } from './trace-shapes';

/** What complaints, claims and determinations are told and asked. */
const { when, Id, Code, Note, Day, Reference, Words } = shapes;

const Photo = z.string().regex(/^[0-9a-f]{64}$/, 'the SHA-256 of the photo, in hex');
const Photos = z.array(Photo).max(40).default([]);
/** A dealer, a hauler, an installer: by the id or the name the plant files them under. */
const Party = z.string().min(1).max(80).nullable().default(null);

const ClaimFields = {
  section: Id.nullable().default(null),
  component: Code,
  symptom: Code,
  place: Code.nullable().default(null),
  noticedOn: Day.nullable().default(null),
};
export const COMPLAINT_SOURCES = [
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
const DeliveryFields = {
  retailer: Party,
  hauler: Party,
  installer: Party,
  setOn: Day.nullable().default(null),
  occupiedOn: Day.nullable().default(null),
  /** Where it stands and whom to write to: kept sealed, given out only with a stated reason. */
  address: Note.optional(),
};

/** A complaint, and with it what it is where that is clear: a claim, or no failure. */
export const ComplaintRequest = z
  .strictObject({
    ...when,
    /** The plant's own number, where it has one. */
    claim: Id.optional(),
    receivedOn: Day,
    source: z.enum(COMPLAINT_SOURCES),
    home: Id.nullable().default(null),
    words: Note.optional(),
    photos: Photos,
    opened: z.strictObject(ClaimFields).optional(),
    noFailureBecause: Note.optional(),
    delivery: z.strictObject(DeliveryFields).optional(),
  })
  .refine(({ opened, home }) => opened === undefined || home !== null, {
    path: ['home'],
    error: 'a claim names its home',
  })
  .refine(({ opened, noFailureBecause }) => opened === undefined || noFailureBecause === undefined, {
    path: ['noFailureBecause'],
    error: 'a claim, or no failure: not both',
  });
export const DismissalRequest = z.strictObject({ ...when, because: Note });
export const ClaimRequest = z.strictObject({ ...when, home: Id, ...ClaimFields });
export const AsFoundRequest = z.strictObject({
  ...when,
  pointsTo: z.array(Code).max(20).default([]),
  speaksAgainst: z.array(Code).max(20).default([]),
  photos: Photos,
  note: Note.optional(),
});
export const DeliveryRequest = z.strictObject({ ...when, home: Id, ...DeliveryFields });

/** The cause of a claim, chosen from its trace. */
export const CauseConfirmationRequest = z.strictObject({
  ...when,
  cause: z.string().min(1).max(300),
  /** Charged to the operation's station as an escape, where the cause is on the line. */
  charge: z.boolean().default(true),
  note: Note.optional(),
});

/** Decided on the claim itself. Anything graver than a noncompliance of this home alone has a file. */
export const ClaimDecisionRequest = z.strictObject({
  ...when,
  severity: z.enum(['noncompliance', 'no-action']),
  decidedOn: Day,
  bases: Note,
});

/** A file of complaints, a row each (RFC 4180), by the names of its header. */
export const ClaimsFileRequest = z.strictObject({ ...when, csv: z.string().min(1).max(200_000) });
export const ClaimsFileAnswer = z.object({
  rows: z.number().int(),
  taken: z.number().int(),
  refused: z.array(z.object({ line: z.number().int(), reason: z.string() })),
});

export const ClaimTold = shapes.Recorded.extend({ claim: z.string() });

export const ClaimAnswer = z.object({
  claim: z.string(),
  receivedOn: z.string(),
  source: z.string(),
  standing: z.enum(['new', 'no-failure', 'claim']),
  home: z.string().nullable(),
  section: z.string().nullable(),
  component: z.string().nullable(),
  symptom: z.string().nullable(),
  says: Words,
  place: z.string().nullable(),
  noticedOn: z.string().nullable(),
  words: z.string().nullable(),
  because: z.string().nullable(),
  photos: z.array(z.string()),
  asFound: z
    .object({
      pointsTo: z.array(z.object({ id: z.string(), name: Words })),
      speaksAgainst: z.array(z.object({ id: z.string(), name: Words })),
      note: z.string().nullable(),
    })
    .nullable(),
  delivery: z
    .object({
      retailer: z.string().nullable(),
      hauler: z.string().nullable(),
      installer: z.string().nullable(),
      setOn: z.string().nullable(),
      occupiedOn: z.string().nullable(),
      /** It is on record, sealed. */
      addressKnown: z.boolean(),
    })
    .nullable(),
  determinations: z.array(z.string()),
  /** Until when it has to be decided whether it is one of the four (3282.404(a)(1)). */
  due: z
    .object({
      day: z.string(),
      doneOn: z.string().nullable(),
      standing: z.enum(['done', 'late-done', 'running', 'soon', 'over']),
    })
    .describe('The thirty days from the day it came'),
  /** Decided on the claim itself, without a file. */
  determined: z
    .object({ severity: z.string(), decidedOn: z.string(), bases: z.string().nullable(), by: z.string() })
    .nullable(),
  confirmed: z
    .object({
      cause: z.string(),
      says: Words,
      operation: z.string().nullable(),
      by: z.string(),
      at: z.string(),
    })
    .nullable(),
});
export const ClaimsAnswer = z.object({
  claims: z.array(ClaimAnswer),
  /** Operations and outside causes an as-found report may point to. */
  sources: z.array(z.object({ id: z.string(), name: Words })),
});

export const SEVERITIES = [
  'imminent-safety-hazard',
  'serious-defect',
  'defect',
  'noncompliance',
  'no-action',
] as const;
/** 24 CFR 3282.404(c). The list is not exclusive. */
export const METHODS = ['i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii', 'other'] as const;
const Methods = z.array(z.enum(METHODS)).max(8).default([]);

export const DeterminationRequest = z.strictObject({
  ...when,
  claim: Id,
  /** The cause chosen, by its key in the trace; null: none yet. */
  cause: z.string().min(1).max(300).nullable().default(null),
  method: EXPOSURE_METHOD.default('whole-group'),
});
export const InitialRequest = z.strictObject({
  ...when,
  severity: z.enum(SEVERITIES),
  decidedOn: Day,
  methods: Methods,
  bases: Note,
});
export const ClassRequest = z.strictObject({
  ...when,
  decidedOn: Day,
  homes: z.array(Id).max(20_000),
  methods: Methods,
  bases: Note,
});
export const AgencyPositionRequest = z.strictObject({
  ...when,
  concurs: z.boolean(),
  takenOn: Day,
  reference: Reference,
  note: Note.optional(),
});
export const NotificationRequest = z.strictObject({ ...when, notifiedOn: Day, reference: Reference });
export const PlanRequest = z.strictObject({ ...when, submittedOn: Day, reference: Reference });
export const PlanApprovalRequest = z.strictObject({
  ...when,
  approvedOn: Day,
  noticesBy: Day.nullable().default(null),
  correctBy: Day.nullable().default(null),
  reference: Reference,
});
export const RemedyRequest = z.strictObject({
  ...when,
  home: Id,
  how: z.enum(['notified', 'corrected', 'refused']),
  doneOn: Day,
  note: Note.optional(),
});
export const CompletionRequest = z.strictObject({ ...when, reportedOn: Day, reference: Reference });
export const CountingRequest = z.strictObject({
  ...when,
  lastDay: z.enum(['next-working-day', 'as-it-falls']),
  daysOff: z.array(z.number().int().min(0).max(6)).max(6).default([0, 6]),
  holidays: z.array(Day).max(400).default([]),
  warnDays: z.number().int().min(0).max(60).default(7),
});
export const DeterminationTold = shapes.Recorded.extend({ determination: z.string() });

const Clock = z.object({
  clock: z.string(),
  section: z.string(),
  says: Words,
  verified: z.boolean(),
  start: z.string(),
  due: z.string(),
  doneOn: z.string().nullable(),
  standing: z.enum(['done', 'late-done', 'running', 'soon', 'over']),
});
export const DeterminationAnswer = z.object({
  determination: z.string(),
  claims: z.array(z.string()),
  receivedOn: z.string(),
  openedBy: z.string(),
  asOfPosition: z.number().int(),
  says: Words,
  cause: z.string().nullable(),
  method: z.string(),
  exposure: z.array(
    Exposed.omit({ reasonSays: true, claims: true, where: true }).extend({ where: z.string() }),
  ),
  trace: z.unknown().describe('The trace as it stood, frozen'),
  history: z.array(
    z.object({
      type: z.string(),
      says: Words,
      by: z.string(),
      at: z.string(),
      note: z.string().nullable(),
      /** Of 3282.404(c), where the entry names some. */
      methods: z.array(z.string()),
    }),
  ),
  classHomes: z.array(z.string()).nullable(),
  remedied: z.array(z.object({ home: z.string(), how: z.string(), doneOn: z.string() })),
  clocks: z.array(Clock),
});
export const DeterminationsAnswer = z.object({
  today: z.string(),
  counting: z.object({
    lastDay: z.string(),
    daysOff: z.array(z.number()),
    holidays: z.array(z.string()),
    warnDays: z.number(),
  }),
  determinations: z.array(
    DeterminationAnswer.pick({
      determination: true,
      claims: true,
      receivedOn: true,
      says: true,
      clocks: true,
    }),
  ),
});
export const CalendarText = z.string().describe('iCalendar, RFC 5545');
