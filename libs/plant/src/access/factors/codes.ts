import { generateSecret, generateURI, verify } from 'otplib';

/** RFC 6238, with what every authenticator application takes: SHA-1, six digits, a step of 30 seconds. */
const STEP_SECONDS = 30;
const MS_A_SECOND = 1_000;
const SECRET_BYTES = 20;
const CODE = /^\d{6}$/;

export const newCodeSecret = (): string => generateSecret({ length: SECRET_BYTES });

/** What an authenticator application reads from a picture. */
export const codeAddress = (secret: string, label: string): string =>
  generateURI({ issuer: 'Studbook', label, secret, period: STEP_SECONDS });

/**
 * The time step of a code that is right, else undefined. One step earlier or later is believed, for a phone whose clock
 * is off (RFC 6238, 5.2); a step that was used once, or one before it, is not believed again.
 */
export const codeStep = async (
  secret: string,
  code: string,
  { now, usedStep }: { readonly now: number; readonly usedStep: number },
): Promise<number | undefined> => {
  if (!CODE.test(code)) return undefined;
  const looked = await verify({
    secret,
    token: code,
    epoch: Math.floor(now / MS_A_SECOND),
    period: STEP_SECONDS,
    epochTolerance: STEP_SECONDS,
    afterTimeStep: usedStep,
  });
  return looked.valid && 'timeStep' in looked ? looked.timeStep : undefined;
};
