import { z } from 'zod';
import { Code, Day, FindingAnswer, Grade, Id, Instant, LIMITS, Note, Source, Words } from './shapes';

/** The rulebook on screen: read, changed, issued, run over history, and one section's plan of it. */

/** Design attributes by their ids. */
const OrderedDesign = z.record(Code, z.string().min(1).max(80));
const NamedAnswer = z.object({ id: z.string(), name: Words });
export const Touches = z.object({ design: z.boolean(), manual: z.boolean() });

/** A letter or stamp of the inspection agency, and the day on it (24 CFR 3282.361). */
export const AgencyApproval = z.strictObject({
  reference: z
    .string()
    .trim()
    .min(1)
    .max(LIMITS.idLength * 2),
  approvedOn: Day,
});

export const IssuedAnswer = z.object({
  revision: z.number().int(),
  effectiveFrom: z.string(),
  issuedAt: z.string().nullable(),
  inForce: z.boolean(),
  /** Names; null: nobody is named. */
  approvedBy: z.string().nullable(),
  draftedBy: z.string().nullable(),
  touches: Touches.nullable(),
  agency: AgencyApproval.nullable(),
  note: z.string().nullable(),
});

export const BookOperation = z.object({
  id: z.string(),
  name: Words,
  station: z.string(),
  crew: z.string(),
  entry: z.enum(['S', 'V', 'I', 'T']),
  scope: z.enum(['section', 'home']),
  /** Where it applies; null: everywhere. */
  conditions: Words.nullable(),
  requires: z.array(z.object({ operation: z.string(), source: Words })),
  /** Everything of earlier stations that is due. */
  allDue: z.boolean(),
  expects: z.array(z.string()),
  hides: z.array(
    z.object({
      operation: z.string(),
      hidden: z.enum(['any', 'second', 'lift']),
      grade: Grade,
      conditions: Words.nullable(),
      source: Words,
    }),
  ),
  signers: z.array(z.string()),
  photo: z.enum(['always', 'sample', 'gauge', 'none']),
  instrument: Words.nullable(),
  lots: z.array(Words),
  gate: z.boolean(),
  label: z.boolean(),
  caution: Words.nullable(),
  manual: z.string().nullable(),
  drawings: z.array(z.string()),
  file: z.string(),
  row: z.number().int(),
});

export const BookValue = z.object({
  operation: z.string(),
  characteristic: z.string(),
  label: Words,
  requires: Words,
  conditions: Words.nullable(),
  grade: Grade,
  sourceKind: Source.shape.kind,
  source: Words,
  row: z.number().int(),
});

export const RulebookAnswer = z.object({
  revision: z.number().int(),
  /** All that were ever issued, the latest first. */
  issued: z.array(IssuedAnswer),
  governing: Words,
  stations: z.array(
    z.object({
      id: z.string(),
      pos: z.number().nullable(),
      kind: z.enum(['line', 'shop', 'yard', 'site']),
      name: Words,
      lanes: z.array(z.string()),
    }),
  ),
  crews: z.array(NamedAnswer),
  operations: z.array(BookOperation),
  values: z.array(BookValue),
});

/** How often a rule's holds turned out to be for nothing. */
export const NuisanceAnswer = z.object({
  position: z.number().int(),
  rules: z.array(
    z.object({
      rule: z.string(),
      name: Words,
      operation: z.string(),
      operationName: Words,
      characteristic: z.string().nullable(),
      label: Words.nullable(),
      raised: z.number().int(),
      /** Released by a person's decision. */
      overruled: z.number().int(),
      /** The work was there, its record was not. */
      signature: z.number().int(),
      mended: z.number().int(),
      open: z.number().int(),
    }),
  ),
});

const FILES = z.record(z.string().min(1).max(LIMITS.idLength), z.string());

export const RulebookFilesAnswer = z.object({
  revision: z.number().int().nullable(),
  proposal: z.string().nullable(),
  files: z.record(z.string(), z.string()),
});

export const ChangeAnswer = z.object({
  what: z.string(),
  change: z.enum(['added', 'dropped', 'changed']),
  id: z.string(),
  touches: z.enum(['design', 'manual']).nullable(),
  file: z.string(),
  row: z.number().int().nullable(),
  says: Words,
});

const Requirement = z.object({ operation: z.string(), says: Words });

/** What a revision changes for one section, as it stands. */
export const SectionChanges = z.object({
  serial: z.string(),
  home: z.string(),
  station: z.string().nullable(),
  revision: z.number().int().nullable(),
  /** Why no plan can be made of its design; null: one can. */
  unfit: z.string().nullable(),
  due: z.array(NamedAnswer),
  notDue: z.array(NamedAnswer),
  changed: z.array(Requirement),
  /** Of the work on record: what would be refused, and what held. */
  findings: z.array(FindingAnswer),
});

export const ExaminationRequest = z.strictObject({ files: FILES });
export const ExaminationAnswer = z.object({
  /** The revision it is compared with; null: there is none. */
  base: z.number().int().nullable(),
  problems: z.array(
    z.object({
      file: z.string(),
      row: z.number().int(),
      column: z.string().nullable(),
      says: z.string(),
      /** The same in both languages. */
      words: Words,
    }),
  ),
  changes: z.array(ChangeAnswer),
  touches: Touches,
  /** Sections now on the line for which something is different. */
  sections: z.array(SectionChanges),
  /** How many were looked at. */
  looked: z.number().int(),
});

export const ProposalAnswer = z.object({
  proposal: z.string(),
  draftedBy: z.string(),
  /** Drafted by whoever asks. */
  own: z.boolean(),
  proposedAt: z.string(),
  base: z.number().int().nullable(),
  /** Another revision was issued since: it has to be compared anew. */
  outdated: z.boolean(),
  effectiveFrom: z.string().nullable(),
  touches: Touches,
  agency: AgencyApproval.nullable(),
  note: z.string().nullable(),
});
export const ProposalsAnswer = z.object({ proposals: z.array(ProposalAnswer) });

export const ProposalRequest = z.strictObject({
  files: FILES,
  /** The revision it was compared with. */
  base: z.number().int().nullable(),
  effectiveFrom: Instant.optional(),
  agency: AgencyApproval.optional(),
  /** Where more is touched than the comparison finds. */
  touches: Touches.optional(),
  note: Note.optional(),
});
export const ProposalMade = z.object({ proposal: z.string(), position: z.number().int() });
export const ApprovalRequest = z.strictObject({ agency: AgencyApproval.optional() });
export const ApprovalAnswer = z.object({ revision: z.number().int(), effectiveFrom: z.string() });
export const ProposalReturnRequest = z.strictObject({ note: Note.optional() });
export const ProposalReturned = z.object({ returned: z.literal(true) });

export const RevisionApplicationAnswer = z.object({
  home: z.string(),
  revision: z.number().int(),
  sections: z.array(SectionChanges),
});
/** Another order for a home, as it would be told: nothing is changed by asking. */
export const OrderPreviewRequest = z.strictObject({
  design: OrderedDesign.default({}),
  sections: z
    .array(z.strictObject({ serial: Id, design: OrderedDesign }))
    .max(8)
    .default([]),
});
export const RevisionApplicationRequest = z.strictObject({
  revision: z.number().int().positive(),
  note: Note.optional(),
});

/** One line of a retro-check as it goes (newline-delimited JSON). */
export const RetroLine = z.discriminatedUnion('is', [
  z.object({ is: z.literal('progress'), homes: z.number(), of: z.number(), entries: z.number() }),
  z.object({
    is: z.literal('found'),
    serial: z.string(),
    home: z.string(),
    operation: z.string(),
    name: Words,
    station: z.string().nullable(),
    position: z.number().int(),
    occurredAt: z.string(),
    /** The revision it was judged by then. */
    judgedBy: z.number().int().nullable(),
    rule: z.string(),
    grade: Grade,
    says: Words,
    /** It was said at the time too. */
    saidThen: z.boolean(),
  }),
  z.object({ is: z.literal('unfit'), serial: z.string(), home: z.string(), says: z.string() }),
  z.object({
    is: z.literal('done'),
    homes: z.number().int(),
    sections: z.number().int(),
    entries: z.number().int(),
    judged: z.number().int(),
    found: z.number().int(),
    /** Of those, not said at the time. */
    fresh: z.number().int(),
  }),
]);
