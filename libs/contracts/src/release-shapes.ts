import { z } from 'zod';
import {
  Code,
  FindingAnswer,
  Id,
  LabelNumber,
  LIMITS,
  Note,
  Reference,
  WorkAnswer,
  Words,
  when,
} from './shapes';

export const LabelAnswer = WorkAnswer.extend({ answer: z.enum(['affixed', 'refused']) });

export const LabelReplacementRequest = z.strictObject({
  serial: Id,
  number: LabelNumber,
  reason: Code.describe('damaged, misprinted: the plant’s own code'),
  photos: z
    .array(z.string().regex(/^[0-9a-f]{64}$/))
    .max(20)
    .default([]),
  note: Note.optional(),
  ...when,
});
export const LabelSupplyRequest = z.strictObject({ first: LabelNumber, last: LabelNumber, ...when });
export const LabelVoidRequest = z.strictObject({ reason: Code, note: Note.optional(), ...when });
export const LabelReclaimRequest = z.strictObject({ note: Note.optional(), ...when });

/** All that stands between a section and its label, and what goes on its plate. */
export const ReleaseAnswer = z.object({
  serial: z.string(),
  home: z.string(),
  model: z.string(),
  station: z.string().nullable(),
  stage: z.string(),
  label: z.string().nullable(),
  labelledAt: z.string().nullable(),
  ready: z.boolean(),
  missing: z.array(FindingAnswer),
  nextLabel: z.string().nullable().describe('The first unused number received'),
  agencySaw: z.array(z.string()),
});
/** Sections that are near their label, and how much each still lacks. */
export const ReleaseListAnswer = z.object({
  sections: z.array(
    z.object({
      serial: z.string(),
      home: z.string(),
      station: z.string().nullable(),
      label: z.string().nullable(),
      missing: z.number().int(),
      holds: z.number().int(),
      redTag: z.boolean(),
    }),
  ),
});

const LabelStanding = z.enum(['unused', 'used', 'void', 'reclaimed', 'replaced']);
export const LabelLogAnswer = z.object({
  runs: z.array(
    z.object({
      first: z.string(),
      last: z.string(),
      at: z.string(),
      count: z.number().int(),
      unused: z.number().int(),
    }),
  ),
  counts: z.object({
    received: z.number().int(),
    unused: z.number().int(),
    used: z.number().int(),
    void: z.number().int(),
    reclaimed: z.number().int(),
    replaced: z.number().int(),
  }),
  labels: z.array(
    z.object({
      number: z.string(),
      standing: LabelStanding,
      serial: z.string().nullable(),
      replacedBy: z.string().nullable(),
      stage: z.string().nullable(),
      at: z.string().nullable(),
    }),
  ),
  /** Wears a label that is not in the log, or stands labelled in the log and wears none. */
  unaccounted: z.array(z.object({ serial: z.string(), label: z.string().nullable() })),
});

export const DataPlateAnswer = z.object({
  home: z.string(),
  model: z.string(),
  /** Latest of the days its sections were labelled; null: not all are. */
  manufacturedOn: z.string().nullable(),
  items: z.array(
    z.object({
      id: z.string(),
      name: Words,
      says: Words.nullable(),
      source: z.string(),
      missing: z.boolean(),
    }),
  ),
  /** What differs between the plate's content and the design or the record. */
  differs: z.array(Words),
});

const Shared = z.enum(['crew', 'shift', 'lot', 'instrument', 'design', 'span']);
export const ContainmentQuestionAnswer = z.object({
  serial: z.string(),
  operation: z.string(),
  /** What the failing section's own record says it could share. */
  facts: z.object({
    crew: z.string().nullable(),
    day: z.string().nullable(),
    lots: z.array(z.string()),
    instrument: z.string().nullable(),
    model: z.string(),
  }),
  sections: z.array(
    z.object({
      serial: z.string(),
      home: z.string(),
      model: z.string(),
      station: z.string().nullable(),
      shares: z.array(Shared),
      doneAt: z.string().nullable(),
      crew: z.string().nullable(),
      covered: z.boolean(),
      label: z.string().nullable(),
    }),
  ),
  looked: z.number().int().describe('Sections still in the plant that were compared'),
});
export const ContainmentRequest = z.strictObject({
  serial: Id,
  defect: Reference.nullable().default(null),
  /** The claim it begins with: what it shows is what is looked for. */
  claim: Id.optional(),
  operation: Code,
  by: z.array(Shared).min(1).max(6),
  sections: z
    .array(z.strictObject({ serial: Id, shares: z.array(Shared).max(6) }))
    .min(1)
    .max(LIMITS.values),
  hold: z.boolean().default(true),
  note: Note.optional(),
  ...when,
});
export const ContainedLookRequest = z.strictObject({
  serial: Id,
  found: z.boolean(),
  note: Note.optional(),
  ...when,
});
export const ContainmentsAnswer = z.object({
  containments: z.array(
    z.object({
      containment: z.string(),
      serial: z.string(),
      operation: z.string(),
      by: z.array(Shared),
      at: z.string(),
      sections: z.array(
        z.object({
          serial: z.string(),
          shares: z.array(Shared),
          station: z.string().nullable(),
          stage: z.string(),
          standing: z.enum(['waiting', 'found', 'clear', 'released']),
          lookedBy: z.string().nullable(),
        }),
      ),
      open: z.number().int(),
    }),
  ),
});

export const DestinationRequest = z.strictObject({
  home: Id,
  destination: z.string().min(1).max(80),
  note: Note.optional(),
  ...when,
});

/** Homes that have left and whose site work is not all in. */
export const SiteAnswer = z.object({
  homes: z.array(
    z.object({
      home: z.string(),
      model: z.string(),
      destination: z.string().nullable(),
      shippedAt: z.string(),
      finishedAtSite: z.boolean().describe('Substantially completed in the plant (24 CFR 3282.601-610)'),
      done: z.number().int(),
      of: z.number().int(),
      open: z.array(z.object({ operation: z.string(), name: Words })),
      holds: z.number().int(),
    }),
  ),
});
