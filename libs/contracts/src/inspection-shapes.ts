import { z } from 'zod';
import { DefectFull, HoldRow } from './defect-shapes';
import { Code, Day, Id, Note, Reference, Words, when } from './shapes';

/** The number on the agency's tag: printed, so letters, digits and a few joiners. */
const Tag = Id;
/** `3280.612(a)`, or a page of the manual. */
const Rule = z.string().min(1).max(80);

export const VisitRequest = z.strictObject({
  day: Day,
  stations: z.array(Code).max(60).default([]).describe('Stations looked at'),
  storage: z.boolean().default(false).describe('Materials in storage were looked at'),
  equipment: z.boolean().default(false).describe('Test equipment was looked at'),
  note: Note.optional(),
  ...when,
});
export const StageSeenRequest = z.strictObject({
  ...when,
  serial: Id,
  station: Code,
  visit: Reference.nullable().default(null),
  note: Note.optional(),
});
export const RedTagRequest = z.strictObject({
  serial: Id,
  tag: Tag,
  defect: Reference.nullable().default(null),
  rule: Rule.nullable().default(null),
  note: Note.optional(),
  ...when,
});
export const RedTagLiftingRequest = z.strictObject({ serial: Id, note: Note.optional(), ...when });

const About = z.enum(['manual', 'storage', 'instrument', 'station', 'section', 'other']);
export const ObservationRequest = z.strictObject({
  about: About,
  subject: z.string().min(1).max(80).nullable().default(null),
  rule: Rule,
  dueOn: Day.nullable().default(null),
  note: Note,
  ...when,
});
export const ObservationAnswerRequest = z.strictObject({ note: Note, ...when });
export const ObservationClosingRequest = z.strictObject({
  accepted: z.boolean(),
  dueOn: Day.nullable().default(null),
  note: Note.optional(),
  ...when,
});

const Observation = z.object({
  observation: z.string(),
  about: About,
  subject: z.string().nullable(),
  rule: z.string(),
  dueOn: z.string().nullable(),
  /** Null: its key is gone. */
  note: z.string().nullable(),
  at: z.string(),
  by: z.string(),
  standing: z.enum(['open', 'answered', 'closed']),
  overdue: z.boolean(),
  answers: z.array(z.object({ note: z.string().nullable(), by: z.string(), at: z.string() })),
});

/** What the inspection agency's inspector sees first. */
export const AgencyAnswer = z.object({
  today: z.string(),
  /** Open nonconformances of what is still in the plant. */
  failures: z.array(DefectFull.extend({ station: z.string().nullable() })),
  tags: z.array(HoldRow),
  /** Homes in the plant, and at which stages each was seen. */
  homes: z.array(
    z.object({
      home: z.string(),
      model: z.string(),
      sections: z.array(
        z.object({ serial: z.string(), station: z.string().nullable(), seen: z.array(z.string()) }),
      ),
      seen: z.boolean(),
    }),
  ),
  observations: z.array(Observation),
  /** Stations at which failures came again, and how many homes had one lately. */
  repeated: z.array(
    z.object({ station: z.string(), homes: z.number().int(), failures: z.number().int(), since: z.string() }),
  ),
  visits: z.array(
    z.object({
      visit: z.string(),
      day: z.string(),
      stations: z.array(z.string()),
      storage: z.boolean(),
      equipment: z.boolean(),
      by: z.string(),
    }),
  ),
  /** The last day each was looked at; monthly at least. Null: never. */
  lastStorage: z.string().nullable(),
  lastEquipment: z.string().nullable(),
});

/** The month as the agency reports it (24 CFR 3282.553). */
export const AgencyReportAnswer = z.object({
  month: z.string(),
  plant: z.string(),
  labelled: z.object({ single: z.number().int(), multi: z.number().int(), sections: z.number().int() }),
  homes: z.array(
    z.object({
      home: z.string(),
      model: z.string(),
      sections: z.number().int(),
      labels: z.array(z.string()),
      labelledOn: z.string(),
    }),
  ),
  visits: z.array(z.object({ day: z.string(), by: z.string(), stations: z.number().int() })),
  failures: z.array(
    z.object({
      home: z.string(),
      serial: z.string(),
      day: z.string(),
      says: Words,
      charged: z.string().nullable(),
      state: z.enum(['open', 'reworked', 'closed']),
    }),
  ),
  homesWithFailures: z.number().int(),
});
