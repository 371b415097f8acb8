import { resolve } from 'node:path';
import { isNetwork } from '@libs/plant';
import type { MailSettings } from '@libs/plant';
import { ROUTES } from '@libs/contracts';
import { z } from 'zod';
import type { ProviderSetting } from '../http/identity-provider';
import { secretFrom } from './kept-files';
import { SettingsWrong } from './settings-wrong';

/** What the environment says, checked. */
export type Settings = {
  readonly port: number;
  readonly host: string;
  readonly data: string;
  readonly databaseUrl: string | null;
  readonly demonstration: boolean;
  readonly secureCookies: boolean;
  /** The address people open, as passkeys and an identity provider know it. */
  readonly origin?: string | null;
  /** Certificate and key, where this server speaks TLS itself. */
  readonly tls?: { readonly cert: string; readonly key: string } | null;
  readonly provider?: ProviderSetting | null;
  /** PINs count on any device, although this is no demonstration. */
  readonly pinsAnywhere?: boolean;
  /** Proxies in front of this server that say truly who asks; false: none, and nobody is believed. */
  readonly trustedHops?: number | false;
  /** Networks of the plant's own that the feed may post to, `10.20.0.0/16`. */
  readonly feedNetworks?: readonly string[];
  /** Null: no letters are sent. */
  readonly mail?: MailSettings | null;
};

const yesNo = z.enum(['0', '1'], 'must be 0 or 1');

const isOrigin = (text: string): boolean => URL.canParse(text) && new URL(text).origin === text;

/** Empty counts as left out: that is how a shell unsets a variable for one command. */
const Environment = z.object({
  PORT: z
    .string()
    .refine((port) => /^\d{1,5}$/.test(port) && Number(port) <= 65_535, 'must be a port number, 0 to 65535')
    .default('3000'),
  HOST: z.string().default('127.0.0.1'),
  STUDBOOK_DATA: z.string().default('./data'),
  DATABASE_URL: z
    .string()
    .regex(/^postgres(?:ql)?:\/\//, 'must begin with postgres:// or postgresql://; leave it out for SQLite')
    .optional(),
  STUDBOOK_DEMO: yesNo.default('1'),
  STUDBOOK_SECURE_COOKIES: yesNo.default('0'),
  STUDBOOK_ORIGIN: z
    .string()
    .refine(isOrigin, 'must be an address without a path, as https://studbook.example')
    .optional(),
  STUDBOOK_TLS_CERT: z.string().optional(),
  STUDBOOK_TLS_KEY: z.string().optional(),
  STUDBOOK_OIDC_ISSUER: z.url('must be the address of an identity provider').optional(),
  STUDBOOK_OIDC_CLIENT: z.string().optional(),
  STUDBOOK_OIDC_SECRET_FILE: z.string().optional(),
  STUDBOOK_OIDC_NAME: z.string().default('Identity provider'),
  STUDBOOK_PINS: z.enum(['on-tablets', 'anywhere'], 'must be on-tablets or anywhere').default('on-tablets'),
  STUDBOOK_PROXIES: z
    .string()
    .regex(/^[0-9]$/, 'must be how many proxies stand in front, 0 to 9')
    .default('0'),
  STUDBOOK_FEED_NETWORKS: z
    .string()
    .transform((text) => text.split(',').map((network) => network.trim()))
    .refine(
      (networks) => networks.every(isNetwork),
      'must be networks such as 10.20.0.0/16, with commas between',
    )
    .default([]),
  STUDBOOK_SMTP_URL: z
    .string()
    .regex(/^smtps?:\/\//, 'must begin with smtp:// or smtps://; leave it out for no letters')
    .optional(),
  STUDBOOK_SMTP_FROM: z
    .string()
    .includes('@', { message: 'must be an address' })
    .default('studbook@localhost'),
});

type Read = z.output<typeof Environment>;

const providerOf = (
  { STUDBOOK_OIDC_ISSUER: issuer, STUDBOOK_OIDC_CLIENT: clientId, ...read }: Read,
  origin: string | null,
): ProviderSetting | null => {
  if (issuer === undefined) return null;
  if (clientId === undefined || origin === null)
    throw new SettingsWrong('STUDBOOK_OIDC_ISSUER needs STUDBOOK_OIDC_CLIENT and STUDBOOK_ORIGIN beside it');
  const clientSecret = secretFrom(read.STUDBOOK_OIDC_SECRET_FILE);
  const back = `${origin}${ROUTES.providerBack.path}`;
  return { issuer, clientId, clientSecret, name: read.STUDBOOK_OIDC_NAME, back };
};

const tlsOf = (cert: string | undefined, key: string | undefined): Settings['tls'] & (object | null) => {
  if (cert === undefined && key === undefined) return null;
  if (cert === undefined || key === undefined)
    throw new SettingsWrong('STUDBOOK_TLS_CERT and STUDBOOK_TLS_KEY go together: name both files, or none');
  return { cert: resolve(cert), key: resolve(key) };
};

export const readSettings = (environment: NodeJS.ProcessEnv): Settings => {
  const given = Object.fromEntries(Object.entries(environment).filter(([, value]) => value !== ''));
  const read = Environment.safeParse(given);
  if (!read.success) {
    throw new SettingsWrong(
      read.error.issues.map(({ path, message }) => `${path.join('.')} ${message}`).join('\n'),
    );
  }
  const { PORT, HOST, STUDBOOK_DATA, DATABASE_URL, STUDBOOK_DEMO, STUDBOOK_SECURE_COOKIES } = read.data;
  const origin = read.data.STUDBOOK_ORIGIN ?? null;
  const tls = tlsOf(read.data.STUDBOOK_TLS_CERT, read.data.STUDBOOK_TLS_KEY);
  const hops = Number(read.data.STUDBOOK_PROXIES);
  return {
    port: Number(PORT),
    host: HOST,
    data: resolve(STUDBOOK_DATA),
    databaseUrl: DATABASE_URL ?? null,
    demonstration: STUDBOOK_DEMO === '1',
    secureCookies: STUDBOOK_SECURE_COOKIES === '1' || tls !== null || origin?.startsWith('https:') === true,
    tls,
    provider: providerOf(read.data, origin),
    origin,
    pinsAnywhere: read.data.STUDBOOK_PINS === 'anywhere',
    trustedHops: hops === 0 ? false : hops,
    feedNetworks: read.data.STUDBOOK_FEED_NETWORKS,
    mail:
      read.data.STUDBOOK_SMTP_URL === undefined
        ? null
        : { url: read.data.STUDBOOK_SMTP_URL, from: read.data.STUDBOOK_SMTP_FROM },
  };
};
