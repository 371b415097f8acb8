import { createHash, generateKeyPairSync, randomUUID, sign } from 'node:crypto';
import type { KeyObject } from 'node:crypto';
import { createServer } from 'node:http';
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

export type TestProvider = {
  readonly issuer: string;
  /** Who is signed in at the provider. */
  readonly become: (subject: string) => void;
  /** What the next id token says otherwise. */
  readonly bend: (claims: { readonly [name: string]: unknown }, key?: KeyObject) => void;
  readonly close: () => Promise<void>;
};

const CLIENT = 'studbook';
const base64 = (value: object): string => Buffer.from(JSON.stringify(value)).toString('base64url');
const json = (response: ServerResponse, body: object, status = 200): void => {
  response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body));
};
const bodyOf = async (request: IncomingMessage): Promise<URLSearchParams> => {
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(Buffer.from(chunk));
  return new URLSearchParams(Buffer.concat(chunks).toString());
};

/** A small provider by OpenID Connect Core 1.0 section 3.1 and RFC 7636: discovery, authorization, token, keys. */
export const openIdentityProviderForTests = async (): Promise<TestProvider> => {
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const asked = new Map<string, URLSearchParams>();
  let subject = 'somebody';
  let bent: { readonly [name: string]: unknown } = {};
  let signedBy = privateKey;
  let issuer = '';

  const idToken = (nonce: string | null): string => {
    const now = Math.floor(Date.now() / 1_000);
    const claims = { iss: issuer, sub: subject, aud: CLIENT, iat: now, exp: now + 300, nonce, ...bent };
    const text = `${base64({ alg: 'ES256', kid: 'k1', typ: 'JWT' })}.${base64(claims)}`;
    const signature = sign('sha256', Buffer.from(text), { key: signedBy, dsaEncoding: 'ieee-p1363' });
    return `${text}.${signature.toString('base64url')}`;
  };
  const token = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const body = await bodyOf(request);
    const question = asked.get(body.get('code') ?? '');
    asked.delete(body.get('code') ?? '');
    const verifier = body.get('code_verifier') ?? '';
    const challenge = createHash('sha256').update(verifier).digest('base64url');
    if (question?.get('code_challenge') !== challenge) {
      json(response, { error: 'invalid_grant' }, 400);
      return;
    }
    const answer = { access_token: 'a', token_type: 'Bearer', id_token: idToken(question.get('nonce')) };
    json(response, answer);
  };
  const authorize = (query: URLSearchParams, response: ServerResponse): void => {
    const code = randomUUID();
    asked.set(code, query);
    const back = new URL(query.get('redirect_uri') ?? '');
    back.search = new URLSearchParams({ code, state: query.get('state') ?? '', iss: issuer }).toString();
    response.writeHead(302, { location: back.href }).end();
  };
  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const { pathname, searchParams } = new URL(request.url ?? '/', issuer);
    if (pathname === '/authorize') authorize(searchParams, response);
    else if (pathname === '/token') await token(request, response);
    else if (pathname === '/keys')
      json(response, {
        keys: [{ ...publicKey.export({ format: 'jwk' }), kid: 'k1', alg: 'ES256', use: 'sig' }],
      });
    else json(response, discovery(issuer));
  };
  const server = createServer((request, response) => void answer(request, response));
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  issuer = `http://127.0.0.1:${String((server.address() as AddressInfo).port)}`;

  return {
    issuer,
    become: (next) => {
      subject = next;
    },
    bend: (claims, key = privateKey) => {
      bent = claims;
      signedBy = key;
    },
    close: () =>
      new Promise((done) => {
        server.closeAllConnections();
        server.close(() => done());
      }),
  };
};

const discovery = (issuer: string): object => ({
  issuer,
  authorization_endpoint: `${issuer}/authorize`,
  token_endpoint: `${issuer}/token`,
  jwks_uri: `${issuer}/keys`,
  response_types_supported: ['code'],
  subject_types_supported: ['public'],
  id_token_signing_alg_values_supported: ['ES256'],
  code_challenge_methods_supported: ['S256'],
  authorization_response_iss_parameter_supported: true,
});
