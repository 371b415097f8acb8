import { generateKeyPairSync } from 'node:crypto';
import request from 'supertest';
import { cookiesOf } from '../support/cookies';
import { openIdentityProviderForTests } from '../support/identity-provider';
import type { TestProvider } from '../support/identity-provider';
import { openTestServer } from '../support/server';
import type { TestServer } from '../support/server';

const BACK = '/api/provider/back';

describe('signing in through the plant’s identity provider', () => {
  let provider: TestProvider;
  let server: TestServer;
  beforeAll(async () => {
    provider = await openIdentityProviderForTests();
    server = await openTestServer({
      provider: {
        ...{ issuer: provider.issuer, clientId: 'studbook', clientSecret: null, name: 'Works sign-in' },
        back: `http://localhost${BACK}`,
      },
    });
    await server
      .post('/api/people/auditor/provider', { subject: 'aldo@works' }, { by: 'administrator' })
      .expect(200);
  });
  afterEach(() => provider.bend({}));
  afterAll(async () => {
    await server.clear();
    await provider.close();
  });

  /** As a browser goes: to the provider, and back with what it says. */
  const goThere = async (): Promise<{ readonly query: string; readonly cookie: string }> => {
    const begun = await request(server.address).get('/api/provider/begin').expect(302);
    const sent = await fetch(String(begun.headers['location']), { redirect: 'manual' });
    const { search } = new URL(sent.headers.get('location') ?? '');
    return { query: search, cookie: cookiesOf(begun) };
  };
  const comeBack = ({ query, cookie }: { readonly query: string; readonly cookie: string }) =>
    request(server.address).get(`${BACK}${query}`).set('cookie', cookie);

  it('lets in whom an administrator has linked, with the roles the plant gave them', async () => {
    expect((await request(server.address).get('/api/provider').expect(200)).body.name).toBe('Works sign-in');
    provider.become('aldo@works');
    const back = await comeBack(await goThere()).expect(200);
    const { body } = await server.get('/api/me', cookiesOf(back)).expect(200);
    expect(body).toMatchObject({ actor: 'auditor', roles: ['auditor'] });
  });

  it('lets nobody in who is not linked, and says what an administrator must know', async () => {
    provider.become('stranger@works');
    const refused = await comeBack(await goThere()).expect(403);
    expect(refused.body.detail).toMatch(/stranger@works/);
  });

  it('takes an answer once, and only in the browser that began', async () => {
    provider.become('aldo@works');
    const there = await goThere();
    const other = await goThere();
    await comeBack({ query: there.query, cookie: other.cookie }).expect(401);
    await comeBack({ query: there.query, cookie: '' }).expect(401);
    await comeBack(there).expect(200);
    await comeBack(there).expect(401);
  });

  /** OpenID Connect Core 1.0, 3.1.3.7: what an ID token is looked at for. ASVS 5.0: 9.1.1, 9.2.1, 9.2.3. */
  it.each([
    ['for another program', { aud: 'another' }],
    ['of another provider', { iss: 'https://elsewhere.example' }],
    ['that has run out', { exp: Math.floor(Date.now() / 1_000) - 3_600 }],
    ['to another question', { nonce: 'another' }],
  ])('takes no token %s', async (_, claims) => {
    provider.become('aldo@works');
    provider.bend(claims);
    await comeBack(await goThere()).expect(401);
  });

  it('takes no token that somebody else has signed', async () => {
    provider.become('aldo@works');
    provider.bend({}, generateKeyPairSync('ec', { namedCurve: 'P-256' }).privateKey);
    await comeBack(await goThere()).expect(401);
  });
});
