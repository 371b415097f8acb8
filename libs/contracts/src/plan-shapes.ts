import { z } from 'zod';
import { Grade, Words } from './shapes';

const PlanValue = z.object({
  characteristic: z.string(),
  label: Words,
  requires: Words,
  /** The cell as its table has it: `<= 32`. */
  required: z.string(),
  from: z.enum(['entry', 'lot', 'instrument']),
  grade: Grade,
  source: Words,
  worstOf: z.number().int(),
});
const PlanOperation = z.object({
  id: z.string(),
  name: Words,
  crew: Words,
  entry: z.enum(['S', 'V', 'I', 'T']),
  caution: Words.nullable(),
  gate: z.boolean(),
  label: z.boolean(),
  photo: z.enum(['always', 'sample', 'gauge', 'none']),
  instrument: Words.nullable(),
  lots: z.array(Words),
  lotKinds: z.array(z.string()),
  /** Kinds approved in place of others. */
  substitutes: z.array(z.object({ kind: Words, by: z.array(Words) })),
  requires: z.array(Words),
  hides: z.array(Words),
  signers: z.array(z.string()),
  manual: z.string().nullable(),
  drawings: z.array(z.string()),
  values: z.array(PlanValue),
  done: z.boolean(),
});

/** What one section needs, station by station: the traveler that goes with it. */
export const BuildPlanAnswer = z.object({
  serial: z.string(),
  home: z.string(),
  model: z.string(),
  role: Words.nullable(),
  /** The revision it is judged by, or would be if it started now. */
  revision: z.number().int(),
  started: z.boolean(),
  planDigest: z.string(),
  position: z.number().int(),
  governing: Words,
  design: z.array(
    z.object({
      attribute: z.string(),
      value: z.string(),
      name: Words,
      says: Words,
      /** It differs from one section of a home to the next. */
      ofSection: z.boolean(),
    }),
  ),
  stations: z.array(z.object({ id: z.string(), name: Words, operations: z.array(PlanOperation) })),
});
