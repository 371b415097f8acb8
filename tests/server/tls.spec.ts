import { chmodSync, copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { readSettings } from '../../apps/server/src/composition/settings';
import { start } from '../../apps/server/src/composition/start';

const TLS = join(__dirname, '../support/tls');
const CA = readFileSync(join(TLS, 'cert.pem'), 'utf8');

type Answer = { readonly status: number; readonly headers: { readonly [name: string]: unknown } };

describe('a server with a certificate', () => {
  let folder: string;
  let key: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'studbook-tls-'));
    key = join(folder, 'key.pem');
    copyFileSync(join(TLS, 'key.pem'), key);
    chmodSync(key, 0o600);
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  const settings = () => ({
    ...readSettings({
      STUDBOOK_DATA: join(folder, 'data'),
      STUDBOOK_TLS_CERT: join(TLS, 'cert.pem'),
      STUDBOOK_TLS_KEY: key,
    }),
    port: 0,
  });
  const open = () => start(settings(), () => undefined, { web: join(folder, 'no-web') });
  const send = (address: string, path: string, body: object): Promise<Answer> =>
    new Promise((resolve, reject) => {
      const sent = request(
        `${address}${path}`,
        { method: 'POST', ca: CA, headers: { 'content-type': 'application/json' } },
        (answer) => {
          answer.resume();
          answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers }));
        },
      );
      sent.on('error', reject);
      sent.end(JSON.stringify(body));
    });

  it('speaks TLS 1.2 and later, sets cookies that hold to this host, and keeps browsers to it', async () => {
    const server = await open();
    expect(server.address).toMatch(/^https:/);
    const made = await send(server.address, '/api/setup', {
      code: server.setupCode,
      name: 'Ada',
      password: 'plates before drywall, always',
    });
    expect(made.status).toBe(200);
    expect(String(made.headers['set-cookie'])).toMatch(
      /^__Host-studbook_session=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict; .*; Secure$/,
    );
    expect(made.headers['strict-transport-security']).toBe('max-age=31536000; includeSubDomains');

    const { port } = new URL(server.address);
    const old = new Promise<string>((resolve) => {
      const socket = connect({
        port: Number(port),
        host: '127.0.0.1',
        ca: CA,
        maxVersion: 'TLSv1.1',
        minVersion: 'TLSv1',
      });
      socket.on('error', (fault) => resolve(String(fault)));
      socket.on('secureConnect', () => resolve('connected'));
    });
    expect(await old).not.toBe('connected');
    await server.close();
  });

  it('does not start with a key that others may read, and says which and what to do', async () => {
    chmodSync(key, 0o644);
    await expect(open()).rejects.toThrow(`${key} holds a secret, and others may read it. chmod go= it`);
  });

  it('does not start with plant keys that others may read', async () => {
    await (await open()).close();
    const digest = join(folder, 'data', 'keys', 'digest.key');
    chmodSync(digest, 0o640);
    await expect(open()).rejects.toThrow(`${digest} holds a secret`);
  });

  it('is not set up by half, nor with a file that is not there', async () => {
    expect(() => readSettings({ STUDBOOK_TLS_CERT: 'cert.pem' })).toThrow(/go together/);
    rmSync(key);
    await expect(open()).rejects.toThrow(`${key} is not there`);
    writeFileSync(key, '');
  });

  it.each([
    [
      { STUDBOOK_ORIGIN: 'https://plant.example/studbook' },
      /STUDBOOK_ORIGIN must be an address without a path/,
    ],
    [{ STUDBOOK_PINS: 'everywhere' }, /STUDBOOK_PINS must be on-tablets or anywhere/],
  ])('is told of a setting that is wrong: %o', (environment, says) => {
    expect(() => readSettings(environment)).toThrow(says);
  });

  it('takes an https address for its cookies too, also where a proxy speaks TLS', () => {
    expect(readSettings({ STUDBOOK_ORIGIN: 'https://plant.example' }).secureCookies).toBe(true);
    expect(readSettings({}).secureCookies).toBe(false);
  });
});
