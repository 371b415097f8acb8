import { z } from 'zod';
import { OperationCard } from './screens';
import { Code, Day, Id, Instant, Note, WorkRequest, Words } from './shapes';

/** What a link opens: the site work of one home, or its build book, with or without what was found and mended. */
export const LINK_PURPOSES = ['installer', 'owner', 'owner-with-defects'] as const;
/** A home is set and finished within months (memory); an owner can be given a new one. */
const LINK_DAYS_MOST = 365;
const Name = z.string().trim().min(1).max(80);

export const LinkRequest = z.strictObject({
  purpose: z.enum(LINK_PURPOSES),
  name: Name.describe('Whom it is for, so that it can be told from others'),
  days: z.int().min(1).max(LINK_DAYS_MOST),
});
/** The token is shown only here. */
export const LinkAnswer = z.object({ link: z.string(), token: z.string(), until: Instant });
export const LinksAnswer = z.object({
  links: z.array(
    z.object({
      link: z.string(),
      purpose: z.enum(LINK_PURPOSES),
      name: z.string(),
      madeAt: Instant,
      until: Instant,
      /** When it was opened last; null: never yet. */
      openedAt: Instant.nullable(),
    }),
  ),
});

/** What an installer sees: the site work of one home, and nobody's name. */
export const SiteLinkAnswer = z.object({
  home: z.string(),
  model: z.string(),
  until: Instant,
  operations: z.array(OperationCard),
  texts: z
    .array(z.object({ id: z.string(), name: Words }))
    .describe('What the values that can be chosen are called'),
  governing: Words,
});
export const LinkWorkRequest = z.strictObject({
  name: Name.describe('Who did it and signs for it'),
  operation: Code,
  values: WorkRequest.shape.values,
  photos: WorkRequest.shape.photos,
  instrument: Id.nullable().default(null),
  note: Note.optional(),
  occurredAt: WorkRequest.shape.occurredAt,
});

const BookWork = z.object({
  says: Words,
  on: Day,
  /** Out of sight now, and how that it was right is known. */
  hidden: z.boolean(),
  known: z.enum(['signed', 'seen', 'reconstructed']),
  photos: z.int(),
});
/** How one home was built, for whoever lives in it. Nobody is named. */
export const BuildBookAnswer = z.object({
  home: z.string(),
  model: z.string(),
  plant: z.string(),
  demonstration: z.boolean(),
  until: Instant,
  sections: z.array(z.object({ serial: z.string(), label: z.string().nullable() })),
  stations: z.array(z.object({ name: Words, from: Day, to: Day, work: z.array(BookWork) })),
  tests: z.array(z.object({ says: Words, on: Day })),
  /** Stages at which the inspection agency saw it. */
  agencySaw: z.array(Words),
  /** What the record does not show as done, or not yet. */
  open: z.array(Words),
  /** Found while it was built, and mended; null: the plant chose not to show it here. */
  mended: z.array(z.object({ says: Words, on: Day })).nullable(),
  governing: Words,
});
