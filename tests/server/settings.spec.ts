import { resolve } from 'node:path';
import { readSettings } from '../../apps/server/src/composition/settings';

describe('the server’s settings', () => {
  it('are a demonstration on SQLite at port 3000 where nothing is said', () => {
    expect(readSettings({})).toStrictEqual({
      port: 3000,
      host: '127.0.0.1',
      data: resolve('data'),
      databaseUrl: null,
      demonstration: true,
      secureCookies: false,
      trustedHops: false,
      origin: null,
      pinsAnywhere: false,
      tls: null,
      provider: null,
      feedNetworks: [],
      mail: null,
    });
  });

  it('take an empty variable as one left out', () => {
    expect(readSettings({ PORT: '', DATABASE_URL: '' })).toMatchObject({ port: 3000, databaseUrl: null });
  });

  it.each([
    [{ PORT: 'http' }, 'PORT must be a port number'],
    [{ PORT: '65536' }, 'PORT must be a port number'],
    [{ DATABASE_URL: 'mysql://x' }, 'DATABASE_URL must begin with postgres://'],
    [{ STUDBOOK_DEMO: 'no' }, 'STUDBOOK_DEMO must be 0 or 1'],
    [{ STUDBOOK_FEED_NETWORKS: '10.0.0.0/33' }, 'STUDBOOK_FEED_NETWORKS must be networks'],
    [{ STUDBOOK_SMTP_URL: 'mail.example' }, 'STUDBOOK_SMTP_URL must begin with smtp://'],
  ])('%j stops the server with the variable’s name: %s', (environment, words) => {
    expect(() => readSettings(environment)).toThrow(words);
  });

  it('are complained of all at once', () => {
    expect(() => readSettings({ PORT: 'x', STUDBOOK_DEMO: 'x' })).toThrow(/PORT[^]*STUDBOOK_DEMO/);
  });
});
