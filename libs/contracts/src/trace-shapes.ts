import { z } from 'zod';
import { Id, Note, Words } from './shapes';

/** What a trace and an exposure answer. */
const Speaks = z.enum(['for', 'against', 'neither']);
const Evidence = z.object({
  kind: z.string(),
  speaks: Speaks,
  says: Words,
  /** Claims whose record shows it. */
  claims: z.array(z.string()),
  detail: z.unknown().describe('Its counts, as the tracing library has them'),
});
const Cause = z.object({
  operation: z.string().nullable(),
  station: z.string().nullable(),
  outside: z.string().nullable(),
  factor: z.string(),
  value: z.string().nullable(),
  widest: z.string().optional(),
});
export const TraceAnswer = z.object({
  claim: z.string(),
  component: z.string(),
  symptom: z.string(),
  says: Words,
  asOf: z.string(),
  position: z.number().int(),
  claims: z.array(z.object({ claim: z.string(), home: z.string(), section: z.string().nullable() })),
  unplaced: z.array(z.string()),
  /** What is compared: homes, or sections where every like claim names one. */
  unit: z.enum(['home', 'section']),
  units: z.object({ claimed: z.number(), of: z.number() }),
  /** Homes somebody lives in, and those of them with a like claim. */
  homes: z.object({ claimed: z.number(), of: z.number() }),
  looked: z.number().int(),
  noCommonCause: z.number(),
  verdict: z.enum(['common-cause', 'undecided', 'no-common-cause']),
  verdictSays: Words,
  candidates: z.array(
    z.object({
      rank: z.number().int(),
      key: z.string(),
      cause: Cause,
      says: Words,
      confidence: z.number(),
      word: z.string(),
      confidenceSays: Words,
      tiedWith: z.array(z.string()),
      evidence: z.array(Evidence),
    }),
  ),
  next: z.object({ kind: z.string(), claim: z.string().nullable(), says: Words }).nullable(),
});

export const EXPOSURE_METHOD = z.enum(['exact', 'whole-group']);
export const Exposed = z.object({
  home: z.string(),
  where: z.enum(['line', 'yard', 'sold']),
  reason: z.string(),
  reasonSays: Words,
  sections: z.array(z.string()),
  /** Like claims of this home. */
  claims: z.array(z.string()),
});
/** With the addresses of owners: why they are needed is asked, and kept in the ledger of accesses. */
export const ExposureExportRequest = z.strictObject({
  claim: Id,
  cause: z.string().min(1).max(300),
  method: EXPOSURE_METHOD.default('whole-group'),
  reason: Note,
});
export const ExposureFile = z.object({ csv: z.string().describe('RFC 4180') });
export const ExposureAnswer = z.object({
  claim: z.string(),
  cause: z.string(),
  says: Words,
  operation: z.string().nullable(),
  method: EXPOSURE_METHOD,
  homes: z.array(Exposed),
  counts: z.object({ line: z.number(), yard: z.number(), sold: z.number() }),
});
