import { z } from 'zod';
import { Code, FindingClass, Id, LIMITS, Note, Reference, Words, when } from './shapes';

/** The quality manager names another cause, and says why. */
export const CauseRequest = z.strictObject({
  serial: Id,
  operation: Code.nullable().describe('null: no operation of the line'),
  note: Note.describe('Why'),
  ...when,
});

export const DispositionRequest = z.strictObject({
  serial: Id,
  disposition: z.enum(['rework', 'repair', 'use-as-is', 'scrap']),
  detail: z
    .string()
    .min(1)
    .max(120)
    .nullable()
    .default(null)
    .describe('Repair: the approved detail it is done to'),
  approval: z.string().min(1).max(200).optional().describe('Use as is: who approved it, and by which letter'),
  note: Note.optional(),
  ...when,
});

/** A long list is forty items; twice that is a mistake of the sender's. */
const PUNCH_ITEMS = 80;

export const PunchListRequest = z.strictObject({
  serial: Id,
  foundAt: Code.nullable().default(null),
  items: z
    .array(
      z.strictObject({
        component: Code,
        symptom: Code,
        place: Code.nullable().default(null),
        quantity: z.number().int().min(1).max(10_000).default(1),
      }),
    )
    .min(1)
    .max(PUNCH_ITEMS),
  ...when,
});

export const PunchSignatureRequest = z.strictObject({
  serial: Id,
  defects: z.array(Reference).max(LIMITS.values).default([]).describe('Left out: all that is open'),
  note: Note.optional(),
  ...when,
});

export const CoverOpeningRequest = z.strictObject({
  serial: Id,
  operation: Code.describe('The cover that was taken down, or the work that was torn out'),
  places: z.array(Code).max(40).default([]).describe('Where; left out: everywhere'),
  also: z.array(Code).max(40).default([]).describe('More work that went with it'),
  defect: Reference.nullable().default(null),
  note: Note.optional(),
  ...when,
});

export const StationHoldRequest = z.strictObject({
  ...when,
  station: Code,
  reason: Code,
  note: Note.optional(),
});
export const StationReleaseRequest = z.strictObject({ ...when, station: Code, note: Note.optional() });

/** Everything that is held, the oldest first. */
export const HoldRow = z.object({
  of: z.enum(['section', 'home', 'station', 'lot', 'instrument']),
  subject: z.string(),
  home: z.string().nullable(),
  hold: z.string(),
  reason: z.string(),
  redTag: z.string().nullable().describe('The number on the tag'),
  operation: z.string().nullable(),
  defect: z.string().nullable(),
  since: z.string().nullable(),
  /** Where it stands now. */
  station: z.string().nullable(),
  stage: z.string().nullable(),
  says: Words,
  /** By whom it goes: the agency, those who decide, or by itself once work is told or verified. */
  goesBy: z.enum(['agency', 'decision', 'verification', 'record']),
});
export const HoldsAnswer = z.object({ now: z.string(), holds: z.array(HoldRow) });

export const DefectFull = z.object({
  defect: z.string(),
  serial: z.string(),
  home: z.string(),
  class: FindingClass,
  state: z.enum(['open', 'reworked', 'closed']),
  severity: z.enum(['minor', 'major', 'critical']).nullable(),
  disposition: z.enum(['rework', 'repair', 'use-as-is', 'scrap']).nullable(),
  agency: z.boolean(),
  component: z.string(),
  symptom: z.string(),
  place: z.string().nullable(),
  foundAt: z.string().nullable(),
  operation: z.string().nullable(),
  charged: z.string().nullable(),
  occurredAt: z.string(),
  says: Words,
});
export const OpenDefectsAnswer = z.object({ defects: z.array(DefectFull) });
