import * as oidc from 'openid-client';

/** What the environment says of a plant's identity provider. */
export type ProviderSetting = {
  readonly issuer: string;
  readonly clientId: string;
  readonly clientSecret: string | null;
  /** What the button says. */
  readonly name: string;
  /** Where the provider sends people back to. */
  readonly back: string;
};

/** OpenID Connect, authorization code with PKCE (RFC 7636): who it is says the provider; what they may, the plant. */
export type IdentityProvider = {
  readonly name: string;
  /** Where to send somebody; `state` is kept in a cookie of their browser until they are back. */
  readonly begin: () => Promise<{ readonly address: string; readonly state: string }>;
  /** The provider's name for who came back; undefined: what came back is no answer to what was begun. */
  readonly finish: (query: string, state: string) => Promise<string | undefined>;
};

type Begun = { readonly verifier: string; readonly nonce: string; readonly until: number };

const LASTS_MS = 600_000;
const KEPT = 1_000;

/** Without TLS only on this machine: that is how a provider is tried out. */
const LOOPBACK: ReadonlySet<string> = new Set(['127.0.0.1', 'localhost', '[::1]']);

export const openIdentityProvider = (
  setting: ProviderSetting,
  now: () => number = Date.now,
): IdentityProvider => {
  const begun = new Map<string, Begun>();
  const configuration = rememberOnceKnown(() => discover(setting));
  return {
    name: setting.name,
    begin: async () => {
      const config = await configuration();
      const [state, nonce, verifier] = [
        oidc.randomState(),
        oidc.randomNonce(),
        oidc.randomPKCECodeVerifier(),
      ];
      const oldest = begun.keys().next();
      if (begun.size >= KEPT && oldest.done !== true) begun.delete(oldest.value);
      begun.set(state, { verifier, nonce, until: now() + LASTS_MS });
      const address = oidc.buildAuthorizationUrl(config, {
        ...{ redirect_uri: setting.back, scope: 'openid', state, nonce },
        ...{ code_challenge: await oidc.calculatePKCECodeChallenge(verifier), code_challenge_method: 'S256' },
      });
      return { address: address.href, state };
    },
    finish: async (query, state) => {
      const known = begun.get(state);
      begun.delete(state);
      if (known === undefined || now() >= known.until) return undefined;
      return subjectIn(await configuration(), new URL(`${setting.back}?${query}`), { ...known, state });
    },
  };
};

const discover = ({ issuer, clientId, clientSecret }: ProviderSetting): Promise<oidc.Configuration> => {
  const server = new URL(issuer);
  // The token comes straight from the provider; its signature is looked at all the same (Core 1.0, 3.1.3.7, 6).
  const execute = [
    oidc.enableNonRepudiationChecks,
    // eslint-disable-next-line @typescript-eslint/no-deprecated -- The library marks it so that it stands out: it is for this machine alone.
    ...(LOOPBACK.has(server.hostname) ? [oidc.allowInsecureRequests] : []),
  ];
  return oidc.discovery(server, clientId, clientSecret ?? undefined, undefined, { execute });
};

/** Asked for again where the provider could not be reached: it may come up later than this server. */
const rememberOnceKnown = <A>(ask: () => Promise<A>): (() => Promise<A>) => {
  let known: A | undefined;
  return async () => (known ??= await ask());
};

/** The library checks signature, issuer, audience, times, nonce and state. What it refuses is nobody. */
const subjectIn = async (
  config: oidc.Configuration,
  address: URL,
  { verifier, nonce, state }: Begun & { readonly state: string },
): Promise<string | undefined> => {
  try {
    const tokens = await oidc.authorizationCodeGrant(config, address, {
      ...{ pkceCodeVerifier: verifier, expectedNonce: nonce, expectedState: state },
      idTokenExpected: true,
    });
    return tokens.claims()?.sub;
  } catch (fault) {
    if (isRefusal(fault)) return undefined;
    throw fault;
  }
};

/** Of the library's kinds of fault, which all carry a code; anything else is ours. */
const isRefusal = (fault: unknown): boolean =>
  fault instanceof Error && 'code' in fault && typeof fault.code === 'string';
