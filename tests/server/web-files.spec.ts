import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request as httpRequest } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import request from 'supertest';
import type { TestServer } from '../support/server';
import { openTestServer } from '../support/server';

describe('the web app’s files', () => {
  let web: string;
  let server: TestServer;
  beforeAll(async () => {
    web = mkdtempSync(join(tmpdir(), 'studbook-web-'));
    mkdirSync(join(web, 'assets'));
    writeFileSync(join(web, 'index.html'), '<!doctype html><title>Studbook</title>');
    writeFileSync(join(web, 'assets/app-3f2a.js'), 'export {};');
    writeFileSync(join(web, '../studbook-secret.txt'), 'nobody reads this');
    server = await openTestServer({ web });
  });
  afterAll(async () => {
    await server.clear();
    rmSync(web, { recursive: true });
    rmSync(join(web, '../studbook-secret.txt'));
  });
  const get = (path: string) => request(server.address).get(path);

  it('are given to anyone, the page never kept and hashed names kept for ever', async () => {
    const page = await get('/').expect(200);
    expect(page.headers).toMatchObject({
      'cache-control': 'no-cache',
      'content-type': 'text/html;charset=utf-8',
    });

    const script = await get('/assets/app-3f2a.js').expect(200);
    expect(script.headers['cache-control']).toBe('public, max-age=31536000, immutable');
    expect(script.headers['content-type']).toMatch(/^text\/javascript/);
  });

  it('let no script run that is not theirs, and no other site frame them', async () => {
    const { headers } = await get('/').expect(200);
    const policy = String(headers['content-security-policy']).split('; ');
    expect(policy).toEqual(
      expect.arrayContaining([
        "default-src 'none'",
        "script-src 'self'",
        "frame-ancestors 'none'",
        "base-uri 'none'",
      ]),
    );
    expect(String(headers['content-security-policy'])).not.toMatch(/unsafe|https?:|\*/);
    expect(headers).toMatchObject({ 'x-content-type-options': 'nosniff', 'referrer-policy': 'no-referrer' });
  });

  it.each(['/station/drywall', '/home/H26-1001', '/sign-in?then=/line'])(
    'answer the app’s own address %s with the page',
    async (path) => {
      expect((await get(path).expect(200)).text).toContain('<title>Studbook</title>');
    },
  );

  it.each([
    ['/assets/gone-1.js', 404],
    ['/api/gone', 404],
    ['/api', 404],
    ['/api/../secret', 404],
  ])('do not stand in for what is not there: %s is a problem, %i', async (path, status) => {
    const answer = await get(path);
    expect(answer.status).toBe(status);
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(answer.headers['x-content-type-options']).toBe('nosniff');
  });

  it.each([
    '/../studbook-secret.txt',
    '/%2e%2e/studbook-secret.txt',
    '/assets/..%2f..%2fstudbook-secret.txt',
    '/%00',
  ])('lie in one folder, and %s does not lead out of it', async (path) => {
    const { hostname, port } = new URL(server.address);
    // A raw request: fetch and supertest would tidy the address up before sending it.
    const text = await new Promise<string>((resolve, reject) => {
      httpRequest({ hostname, port, path }, (answer) => {
        let body = '';
        answer.setEncoding('utf8');
        answer.on('data', (chunk: string) => (body += chunk));
        answer.on('end', () => resolve(body));
      })
        .on('error', reject)
        .end();
    });
    expect(text).not.toContain('nobody reads this');
  });

  it('keep the API’s answers out of every cache', async () => {
    const { headers } = await get('/api/health').expect(200);
    expect(headers).toMatchObject({ 'cache-control': 'no-store', 'x-content-type-options': 'nosniff' });
  });
});
