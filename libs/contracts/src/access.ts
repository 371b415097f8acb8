import { z } from 'zod';
import { Me } from './screens';
import { SCOPE_NAMES } from './scopes';
import { Code, Id, Instant } from './shapes';

export const ROLES = [
  'station-lead',
  'quality-manager',
  'inspector',
  'agency-inspector',
  'auditor',
  'administrator',
  'machine',
] as const;
/** What people may be; a machine has a token. */
export const PERSONAL_ROLES = [
  'station-lead',
  'quality-manager',
  'inspector',
  'agency-inspector',
  'auditor',
  'administrator',
] as const;

/** Shown to colleagues; sealed in the record. */
const Name = z.string().trim().min(1).max(80);
/** Four digits are what a glove types; an office chooses longer ones, or words. */
export const Pin = z.string().min(4).max(512);

export const PersonRow = z.object({
  person: z.string(),
  name: z.string(),
  roles: z.array(z.string()),
  crew: z.string().nullable(),
  stations: z.array(z.string()),
  /** Whether there is a PIN that lets them in. */
  signsIn: z.boolean(),
});
export const PeopleAnswer = z.object({ people: z.array(PersonRow) });
export const PersonRequest = z.strictObject({
  /** Left out: somebody new. */
  person: Id.optional(),
  name: Name,
  roles: z.array(z.enum(PERSONAL_ROLES)).min(1).max(PERSONAL_ROLES.length),
  crew: Code.nullable(),
  stations: z.array(Code).max(200),
});
/** `pin` is shown only here; null where the person has one already. */
export const PersonAnswer = z.object({ person: z.string(), pin: z.string().nullable() });
export const PinAnswer = z.object({ pin: z.string() });
export const Done = z.object({ done: z.literal(true) });
export const NoBody = z.strictObject({});

export const SecretRow = z.object({
  id: z.string(),
  actor: z.string(),
  name: z.string(),
  role: z.string().nullable(),
  madeAt: Instant,
  seenAt: Instant,
  expiresAt: Instant.nullable(),
  /** The bound tablet a session is on. */
  tablet: z.string().nullable(),
  /** What a token is held to; null: all that its role may. */
  scopes: z.array(z.string()).nullable(),
});
export const SessionsAnswer = z.object({ sessions: z.array(SecretRow) });
export const TokensAnswer = z.object({ tokens: z.array(SecretRow) });
export const TokenRequest = z.strictObject({
  role: z.enum(ROLES),
  name: Name,
  /** Left out: all that its role may. */
  scopes: z.array(z.enum(SCOPE_NAMES)).min(1).max(SCOPE_NAMES.length).optional(),
});
/** The token is shown only here. */
export const TokenAnswer = z.object({ token: z.string(), actor: z.string() });

/** What stands in the ledger of accesses, latest first. `by` is a name where one is known. */
export const AccessesAnswer = z.object({
  accesses: z.array(
    z.object({
      position: z.number().int(),
      at: z.string(),
      type: z.string(),
      by: z.string(),
      account: z.string(),
      data: z.record(z.string(), z.unknown()),
    }),
  ),
  /** Where the next, older page begins; null at the end. */
  before: z.number().int().nullable(),
});

export const SetupAnswer = z.object({
  /** Whether this plant still waits for its first administrator. */
  needed: z.boolean(),
});
export const SetupRequest = z.strictObject({
  /** Printed where the server was started. */
  code: z.string().min(1).max(64),
  name: Name,
  password: z.string().min(1).max(512),
});
export const SetupDone = z.object({ me: Me });
