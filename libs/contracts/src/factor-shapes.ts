import { z } from 'zod';
import { Done, NoBody, Pin } from './access';
import { Me } from './screens';
import { Code, Id, Instant } from './shapes';

/** A PIN or a password as it is typed; the longest is the longest password. */
const Secret = Pin;
/** Six digits of a phone, or a recovery code; blanks and hyphens may stand between. */
const SignInCode = z.string().min(6).max(64);
/** Letters in groups, as they are read out. */
const TypedCode = z.string().min(1).max(64);
const PasskeyName = z.string().trim().min(1).max(80);
/** What `navigator.credentials` gave, field by field; the server looks at it with its own library. */
const AuthenticatorAnswer = z.looseObject({
  id: z.string().min(1).max(1_024),
  rawId: z.string().min(1).max(1_024),
  type: z.literal('public-key'),
  response: z.record(z.string().max(64), z.unknown()),
});
/** What goes into `navigator.credentials`. */
const AuthenticatorQuestion = z.object({ options: z.record(z.string(), z.unknown()) });

export const OwnAccessAnswer = z.object({
  pin: z.boolean(),
  password: z.boolean(),
  /** Whether a phone's codes are asked for. */
  codes: z.boolean(),
  recoveryLeft: z.number().int(),
  passkeys: z.array(
    z.object({ id: z.string(), name: z.string(), madeAt: Instant, usedAt: Instant.nullable() }),
  ),
  /** Whether this server has an address that passkeys can be bound to. */
  passkeysHere: z.boolean(),
});

/** `secret`: the PIN or password in use now, whoever sits at an open session. */
const Proving = { secret: Secret, code: SignInCode.optional() };
export const OwnPasswordRequest = z.strictObject({ ...Proving, password: z.string().min(1).max(512) });
export const CodesRequest = z.strictObject(Proving);
export const CodesAnswer = z.object({ secret: z.string(), address: z.string() });
export const CodesConfirmRequest = z.strictObject({ code: SignInCode });
/** Each works once. Shown only here. */
export const CodesConfirmAnswer = z.object({ recovery: z.array(z.string()) });
export const PasskeyQuestionRequest = z.strictObject(Proving);
export const PasskeyRequest = z.strictObject({ name: PasskeyName, answer: AuthenticatorAnswer });
export const PasskeySignInRequest = z.strictObject({ answer: AuthenticatorAnswer });
export const SignedInAnswer = z.object({ me: Me });
export { AuthenticatorQuestion, Done, NoBody };

/** The code is shown only here. */
export const InvitationAnswer = z.object({ code: z.string(), until: Instant });
export const InvitationRequest = z.strictObject({ code: TypedCode, password: z.string().min(1).max(512) });
export const ProviderLinkRequest = z.strictObject({ subject: z.string().trim().min(1).max(255) });

const TabletFields = { tablet: z.string(), name: z.string(), stations: z.array(z.string()) };
export const TabletsAnswer = z.object({
  tablets: z.array(z.object({ ...TabletFields, bound: z.boolean(), madeAt: Instant, seenAt: Instant })),
});
export const TabletRequest = z.strictObject({ name: PasskeyName, stations: z.array(Code).max(200) });
/** The code is shown only here; it is typed into the tablet within a quarter of an hour. */
export const TabletAnswer = z.object({ tablet: z.string(), code: z.string(), until: Instant });
export const BindingRequest = z.strictObject({ code: TypedCode });
export const BindingAnswer = z.object({
  /** The tablet this browser is bound as; null: none. */
  tablet: z.object(TabletFields).nullable(),
  /** Whether PINs count only on a bound tablet here. */
  needed: z.boolean(),
});

/**
 * Signs one telling by hand, before it is sent: `key` is the idempotency key it will be sent under. Shown is a PIN, a
 * password with its code, or a passkey.
 */
export const SignatureRequest = z.union([
  z.strictObject({ key: z.string().min(1).max(128), ...Proving }),
  z.strictObject({ key: z.string().min(1).max(128), answer: AuthenticatorAnswer }),
]);
export const SignatureAnswer = z.object({ until: Instant });
export const ProviderAnswer = z.object({
  /** What the button says; null: this plant has no identity provider. */
  name: z.string().nullable(),
});
export const SubjectId = Id;
