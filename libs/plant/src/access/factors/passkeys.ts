import {
  generateAuthenticationOptions,
  generateRegistrationOptions,
  verifyAuthenticationResponse,
  verifyRegistrationResponse,
} from '@simplewebauthn/server';
import type {
  AuthenticationResponseJSON,
  PublicKeyCredentialCreationOptionsJSON,
  PublicKeyCredentialRequestOptionsJSON,
  RegistrationResponseJSON,
  WebAuthnCredential,
} from '@simplewebauthn/server';
import type { Doorkeeping } from '../doorkeeping';
import { challenges } from './challenges';
import type { Challenges } from './challenges';

/** Where passkeys hold: the name of the site they are bound to, and the address the browser must have shown. */
export type PasskeySite = { readonly name: string; readonly origin: string };

/** Answers come from a browser and are looked at by the library, field by field. */
export type AuthenticatorAnswer = { readonly [field: string]: unknown };

/** WebAuthn level 2, user verification required: what somebody has and what they know or are, in one. */
export type Passkeys = {
  readonly beginPasskey: (
    person: string,
    name: string,
    site: PasskeySite,
  ) => Promise<PublicKeyCredentialCreationOptionsJSON>;
  /** False: the answer is not one to what was asked. */
  readonly addPasskey: (
    person: string,
    named: { readonly name: string; readonly answer: AuthenticatorAnswer },
    site: PasskeySite,
  ) => Promise<boolean>;
  readonly askPasskey: (site: PasskeySite) => Promise<PublicKeyCredentialRequestOptionsJSON>;
  /** Whose passkey has answered; undefined: nobody's. */
  readonly passkeyOf: (answer: AuthenticatorAnswer, site: PasskeySite) => Promise<string | undefined>;
};

type Kept = { readonly publicKey: string; readonly counter: number };
const keptIn = (data: string): Kept => JSON.parse(data) as Kept;
const PREFIX = 'passkey-';
const idFor = (credential: string): string => `${PREFIX}${credential}`;
const credentialOf = (id: string): string => id.slice(PREFIX.length);

/** The shapes are checked by the library that reads them; what is wrong there it throws, and that is a no. */
const asRegistration = (answer: AuthenticatorAnswer): RegistrationResponseJSON =>
  answer as unknown as RegistrationResponseJSON;
const asAuthentication = (answer: AuthenticatorAnswer): AuthenticationResponseJSON =>
  answer as unknown as AuthenticationResponseJSON;

/** An answer made up by hand breaks the reading in many ways. All of them mean: not proven. */
const orNothing = async <A>(look: () => Promise<A>): Promise<A | undefined> => {
  try {
    return await look();
  } catch (fault) {
    if (fault instanceof Error) return undefined;
    throw fault;
  }
};

type Asking = Pick<Doorkeeping, 'rows' | 'now' | 'notes'> & { readonly asked: Challenges };

export const passkeys = ({ rows, now, notes }: Doorkeeping): Passkeys => {
  const asking = { rows, now, notes, asked: challenges(now) };
  return { ...making(asking), ...showing(asking) };
};

const making = ({ rows, now, notes, asked }: Asking): Pick<Passkeys, 'beginPasskey' | 'addPasskey'> => ({
  beginPasskey: async (person, name, site) => {
    const own = (await rows.factors(person)).filter(({ kind }) => kind === 'passkey');
    return generateRegistrationOptions({
      rpName: 'Studbook',
      rpID: site.name,
      userID: new Uint8Array(Buffer.from(person)),
      userName: name,
      userDisplayName: name,
      challenge: new Uint8Array(Buffer.from(asked.make(person), 'base64url')),
      attestationType: 'none',
      authenticatorSelection: { residentKey: 'required', userVerification: 'required' },
      excludeCredentials: own.map(({ id }) => ({ id: credentialOf(id) })),
    });
  },
  addPasskey: async (person, { name, answer }, site) => {
    const looked = await orNothing(() =>
      verifyRegistrationResponse({
        response: asRegistration(answer),
        expectedChallenge: (challenge) => asked.take(challenge, person),
        expectedOrigin: site.origin,
        expectedRPID: site.name,
        requireUserVerification: true,
      }),
    );
    if (looked?.verified !== true) return false;
    const { credential } = looked.registrationInfo;
    // One that is another's already would let that other in as this one.
    if ((await rows.factor(idFor(credential.id))) !== undefined) return false;
    await notes.note({ type: 'FactorAdded', data: { account: person, factor: 'passkey' } });
    await rows.putFactor({
      ...{ id: idFor(credential.id), person, kind: 'passkey', name, data: dataOf(credential) },
      ...{ madeAt: now(), used: 0, expiresAt: null },
    });
    return true;
  },
});

const showing = ({ rows, now, asked }: Asking): Pick<Passkeys, 'askPasskey' | 'passkeyOf'> => ({
  askPasskey: (site) =>
    generateAuthenticationOptions({
      rpID: site.name,
      challenge: new Uint8Array(Buffer.from(asked.make(null), 'base64url')),
      userVerification: 'required',
    }),
  passkeyOf: async (answer, site) => {
    const id = answer['id'];
    const row = typeof id === 'string' ? await rows.factor(idFor(id)) : undefined;
    if (row?.kind !== 'passkey') return undefined;
    const { publicKey, counter } = keptIn(row.data);
    const looked = await orNothing(() =>
      verifyAuthenticationResponse({
        response: asAuthentication(answer),
        expectedChallenge: (challenge) => asked.take(challenge, null),
        expectedOrigin: site.origin,
        expectedRPID: site.name,
        credential: {
          id: credentialOf(row.id),
          publicKey: new Uint8Array(Buffer.from(publicKey, 'base64url')),
          counter,
        },
        requireUserVerification: true,
      }),
    );
    if (looked?.verified !== true) return undefined;
    const data = JSON.stringify({ publicKey, counter: looked.authenticationInfo.newCounter });
    await rows.putFactor({ ...row, data, used: now() });
    return row.person;
  },
});

const dataOf = ({ publicKey, counter }: WebAuthnCredential): string =>
  JSON.stringify({ publicKey: Buffer.from(publicKey).toString('base64url'), counter });
