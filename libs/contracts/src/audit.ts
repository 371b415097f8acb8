import { z } from 'zod';
import { Day } from './shapes';

export const SAMPLING_LEVELS = ['S-1', 'S-2', 'S-3', 'S-4', 'I', 'II', 'III'] as const;
export const SAMPLING_LIMITS = ['0.65', '1.0', '1.5', '2.5', '4.0', '6.5', '10'] as const;

/** How an audit's homes are to be drawn. */
export const SampleRequest = z.strictObject({
  from: Day,
  to: Day,
  level: z.enum(SAMPLING_LEVELS),
  limit: z.enum(SAMPLING_LIMITS),
  /** Left out: the server draws one. Given: the same homes as before come out. */
  seed: z.string().min(1).max(64).optional(),
});
export const SampleAnswer = z.object({
  from: z.string(),
  to: z.string(),
  level: z.string(),
  limit: z.string(),
  seed: z.string(),
  /** Homes labelled on these days. */
  lot: z.number().int(),
  /** ISO 2859-1, single sampling, normal inspection. */
  letter: z.string(),
  size: z.number().int(),
  accept: z.number().int(),
  reject: z.number().int(),
  homes: z.array(z.string()),
});
/** The bytes of a ZIP. */
export const PacketBytes = z.unknown().meta({ description: 'One ZIP: the record to read, and its proofs' });
