import { z } from 'zod';
import * as shapes from './shapes';

/** What lots, instruments and qualifications are told and asked. */
const { when, Id, Code, Note, Day } = shapes;

export const QuarantineRequest = z.strictObject({ ...when, reason: Code, note: Note.optional() });
export const LotReleaseRequest = z.strictObject({ ...when, note: Note.optional() });
export const UnmountingRequest = z.strictObject({ ...when, station: Code, lot: Id });
export const CalibrationRequest = z.strictObject({
  ...when,
  instrument: Id,
  kind: Code,
  properties: z.array(shapes.RecordedValue).max(40).default([]),
  dueOn: Day.nullable(),
  /** As it was found, before anything was adjusted. */
  inTolerance: z.boolean(),
});
/** `crew:quality`, `role:inspector`: as the rulebook's signers have it. */
const Token = z.string().regex(/^(?:crew|role):[^\s:]{1,64}$/, 'crew: or role:, and its id');
export const QualificationRequest = z.strictObject({
  ...when,
  person: Id,
  token: Token,
  /** The last day; null: for good. */
  until: Day.nullable(),
});
export const QualificationEndRequest = z.strictObject({ ...when, person: Id, token: Token });

const Design = z.record(Code, z.string().min(1).max(80));
/** What changes; all else stays as it was ordered. */
export const OrderChangeRequest = z.strictObject({
  ...when,
  home: Id,
  design: Design.default({}),
  sections: z
    .array(z.strictObject({ serial: Id, design: Design }))
    .max(8)
    .default([]),
  note: Note.optional(),
});
export const DeviationRequest = z.strictObject({
  ...when,
  home: Id,
  operation: Code,
  /** The approval: a letter, by its number and date. */
  reference: z.string().min(1).max(120),
  allows: z.discriminatedUnion('what', [
    z.strictObject({
      what: z.literal('value'),
      characteristic: Code,
      /** As a table has it: `<= 26`. */
      required: z.string().min(1).max(200),
    }),
    z.strictObject({ what: z.literal('lot'), kind: Code, substitute: Code }),
  ]),
  note: Note.optional(),
});

/** Sections that were held for the lot, or let go. */
export const LotReachTold = shapes.Recorded.extend({ sections: z.array(z.string()) });

const Words = shapes.Words;
const Standing = z.enum(['good', 'soon', 'over', 'bad']);

export const EquipmentAnswer = z.object({
  today: z.string(),
  lots: z.array(
    z.object({
      lot: z.string(),
      kind: z.string(),
      kindName: Words,
      maker: z.string().nullable(),
      usableUntil: z.string().nullable(),
      mountedAt: z.array(z.object({ station: z.string(), name: Words })),
      standing: Standing,
    }),
  ),
  instruments: z.array(
    z.object({
      instrument: z.string(),
      kind: z.string(),
      kindName: Words,
      dueOn: z.string().nullable(),
      standing: Standing,
    }),
  ),
  qualifications: z.array(
    z.object({
      person: z.string(),
      name: z.string(),
      token: z.string(),
      says: Words,
      until: z.string().nullable(),
      standing: Standing,
    }),
  ),
});

const Reached = z.object({
  serial: z.string(),
  home: z.string(),
  operation: z.string(),
  operationName: Words,
  at: z.string(),
  station: z.string().nullable(),
  stage: z.string(),
  label: z.string().nullable(),
});
export const InstrumentReachAnswer = z.object({
  instrument: z.string(),
  kindName: Words,
  /** The last time it was found good; null: never. */
  goodOn: z.string().nullable(),
  /** When it was found out of tolerance after that; null: it is good as far as is known. */
  foundOn: z.string().nullable(),
  tested: z.array(Reached),
});
export const LotReachAnswer = z.object({
  lot: z.string(),
  kindName: Words,
  quarantined: z.boolean(),
  builtInto: z.array(Reached),
});
