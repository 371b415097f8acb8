import type { Example } from './example';
import type { RouteName } from './routes';

const answer = { id: 'kQ3v', rawId: 'kQ3v', type: 'public-key', response: { clientDataJSON: 'e30' } };

/** Invented; no secret in them is anybody's. */
export const factorExamples = {
  ownPassword: { body: { secret: '550731', password: 'plates before drywall, always' } },
  codes: { body: { secret: '550731' } },
  codesConfirm: { body: { code: '492 039' } },
  codesEnd: { body: { secret: '550731', code: '492039' } },
  passkeyQuestion: { body: { secret: '550731' } },
  passkey: { body: { name: 'key at the office', answer } },
  passkeyEnd: { params: { passkey: 'passkey-kQ3v' }, body: {} },
  signInQuestion: { body: {} },
  passkeySignIn: { body: { answer } },
  invitation: { params: { person: 'p-112' }, body: {} },
  invitationTaken: {
    body: { code: 'B7KD-93MX-TQ2W-H4PZ-K8RC-2WNF', password: 'plates before drywall, always' },
  },
  factorsEnd: { params: { person: 'p-112' }, body: {} },
  providerLink: { params: { person: 'p-112' }, body: { subject: '00u1-example' } },
  tablet: { body: { name: 'at rough-in', stations: ['rough-in'] } },
  tabletEnd: { params: { tablet: 'tablet-3f0a91c2' }, body: {} },
  bind: { body: { code: 'B7KD-93MX-TQ2W' } },
  signature: { body: { key: '0199c2a0-7c1e-7d4a-9b5e-000000000009', secret: '550731' } },
} satisfies { readonly [name in RouteName]?: Example };
