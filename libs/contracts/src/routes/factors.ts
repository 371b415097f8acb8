import { z } from 'zod';
import * as more from '../factor-shapes';
import { get, tell } from './route';
import type { Route } from './route';

const administrators = { access: ['administrator'], keyed: false, status: 200 } as const;
const own = { access: 'signed-in', keyed: false, status: 200 } as const;
const anyone = { access: 'anyone', keyed: false, status: 200 } as const;

/** How people show who they are, and the tablets that PINs count on. */
export const factorRoutes = {
  ownAccess: get('/api/own-access', 'What you sign in with', more.OwnAccessAnswer),
  ownPassword: tell(
    '/api/own-access/password',
    'Choose a password; every other session of yours ends',
    { body: more.OwnPasswordRequest, answer: more.Done },
    own,
  ),
  codes: tell(
    '/api/own-access/codes',
    'Begin with codes of an authenticator application',
    { body: more.CodesRequest, answer: more.CodesAnswer },
    own,
  ),
  codesConfirm: tell(
    '/api/own-access/codes/confirmation',
    'Give a first code of the application; recovery codes are shown once',
    { body: more.CodesConfirmRequest, answer: more.CodesConfirmAnswer },
    own,
  ),
  codesEnd: tell(
    '/api/own-access/codes/end',
    'Do without codes again',
    { body: more.CodesRequest, answer: more.Done },
    own,
  ),
  passkeyQuestion: tell(
    '/api/own-access/passkeys/question',
    'What an authenticator is asked, to make a passkey',
    { body: more.PasskeyQuestionRequest, answer: more.AuthenticatorQuestion },
    own,
  ),
  passkey: tell(
    '/api/own-access/passkeys',
    'Add a passkey',
    { body: more.PasskeyRequest, answer: more.Done },
    own,
  ),
  passkeyEnd: tell(
    '/api/own-access/passkeys/{passkey}/end',
    'Take a passkey away',
    { body: more.NoBody, answer: more.Done },
    own,
  ),
  signInQuestion: tell(
    '/api/sign-in/passkey/question',
    'What an authenticator is asked, to sign in or to sign by hand',
    { body: more.NoBody, answer: more.AuthenticatorQuestion },
    anyone,
  ),
  passkeySignIn: tell(
    '/api/sign-in/passkey',
    'Sign in by passkey; sets a session cookie',
    { body: more.PasskeySignInRequest, answer: more.SignedInAnswer },
    anyone,
  ),
  invitation: tell(
    '/api/people/{person}/invitation',
    'Let somebody choose a password; the code is shown once',
    { body: more.NoBody, answer: more.InvitationAnswer },
    administrators,
  ),
  invitationTaken: tell(
    '/api/invitations',
    'Choose a password by the code of an invitation; sets a session cookie',
    { body: more.InvitationRequest, answer: more.SignedInAnswer },
    anyone,
  ),
  factorsEnd: tell(
    '/api/people/{person}/factors/end',
    'Somebody lost their phone or key: codes and passkeys end, sessions too',
    { body: more.NoBody, answer: more.Done },
    administrators,
  ),
  providerLink: tell(
    '/api/people/{person}/provider',
    'Say which account at the plant’s identity provider is theirs',
    { body: more.ProviderLinkRequest, answer: more.Done },
    administrators,
  ),
  tablets: get('/api/tablets', 'Tablets that PINs count on', more.TabletsAnswer, {
    access: ['administrator'],
  }),
  tablet: tell(
    '/api/tablets',
    'Offer a tablet to stations; the code that binds it is shown once',
    { body: more.TabletRequest, answer: more.TabletAnswer },
    administrators,
  ),
  tabletEnd: tell(
    '/api/tablets/{tablet}/end',
    'PINs count there no more; every session on it ends',
    { body: more.NoBody, answer: more.Done },
    administrators,
  ),
  binding: get('/api/binding', 'Which tablet this browser is bound as', more.BindingAnswer, {
    access: 'anyone',
  }),
  bind: tell(
    '/api/binding',
    'Bind this browser as a tablet, by the code an administrator was shown; sets a cookie',
    { body: more.BindingRequest, answer: more.BindingAnswer },
    anyone,
  ),
  provider: get(
    '/api/provider',
    'Whether people may sign in through an identity provider',
    more.ProviderAnswer,
    {
      access: 'anyone',
    },
  ),
  providerBegin: get('/api/provider/begin', 'Goes on to the identity provider', z.string(), {
    ...{ access: 'anyone', media: 'text/html', status: 302 },
  }),
  providerBack: get(
    '/api/provider/back',
    'Comes back from the identity provider; sets a session cookie',
    z.string(),
    { access: 'anyone', media: 'text/html' },
  ),
  signature: tell(
    '/api/signatures',
    'Sign one telling by hand, before it is sent',
    { body: more.SignatureRequest, answer: more.SignatureAnswer },
    own,
  ),
} as const satisfies { readonly [name: string]: Route };
