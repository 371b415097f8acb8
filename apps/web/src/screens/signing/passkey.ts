import { startAuthentication, startRegistration } from '@simplewebauthn/browser';
import type {
  PublicKeyCredentialCreationOptionsJSON,
  PublicKeyCredentialRequestOptionsJSON,
} from '@simplewebauthn/browser';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';

type Options = { readonly [field: string]: unknown };
/** Made by the server's half of the same library. */
const toMake = (options: Options): PublicKeyCredentialCreationOptionsJSON =>
  options as unknown as PublicKeyCredentialCreationOptionsJSON;
const toShow = (options: Options): PublicKeyCredentialRequestOptionsJSON =>
  options as unknown as PublicKeyCredentialRequestOptionsJSON;

type Answer = {
  readonly id: string;
  readonly rawId: string;
  readonly type: 'public-key';
  readonly response: Record<string, unknown>;
};
export type Shown =
  { readonly ok: true; readonly answer: Answer } | { readonly ok: false; readonly trouble: Trouble | null };

/** `trouble` null: the device said nothing, or whoever holds it would not. */
const shown = async (answering: Promise<{ readonly id: string }>): Promise<Shown> => {
  try {
    return { ok: true, answer: { ...(await answering) } as Answer };
  } catch (fault) {
    if (fault instanceof Error) return { ok: false, trouble: null };
    throw fault;
  }
};

export const showPasskey = async (): Promise<Shown> => {
  const asked = await ask('signInQuestion', {}, { body: {} });
  return asked.ok
    ? shown(startAuthentication({ optionsJSON: toShow(asked.answer.options) }))
    : { ok: false, trouble: asked.trouble };
};

export const makePasskey = async (proving: {
  readonly secret: string;
  readonly code: string | undefined;
}): Promise<Shown> => {
  const asked = await ask('passkeyQuestion', {}, { body: proving });
  return asked.ok
    ? shown(startRegistration({ optionsJSON: toMake(asked.answer.options) }))
    : { ok: false, trouble: asked.trouble };
};
