import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openPlantAt, dataFolder } from '@libs/plant';
import { openTestServer } from '../support/server';
import type { TestServer } from '../support/server';

const HOOK = join(__dirname, '../support/typescript.cjs');
const MAIN = join(__dirname, '../../apps/server/src/main.ts');

/** A second server from the sources, in a process of its own, until it gives up. */
const stray = (environment: NodeJS.ProcessEnv): Promise<{ readonly code: number; readonly said: string }> =>
  new Promise((done) => {
    const child = spawn(process.execPath, ['--require', HOOK, MAIN], {
      env: { ...process.env, DATABASE_URL: '', ...environment },
    });
    let said = '';
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (text: Buffer) => (said += text.toString()));
    child.once('close', (code) => done({ code: code ?? -1, said }));
  });

describe('a second server', () => {
  let server: TestServer;
  let other = '';
  beforeAll(async () => {
    server = await openTestServer();
    other = mkdtempSync(join(tmpdir(), 'studbook-stray-'));
  });
  afterAll(async () => {
    await server.clear();
    rmSync(other, { recursive: true });
  });

  it('for the same plant says who writes it, and leaves the first recording', async () => {
    const { code, said } = await stray({ PORT: '0', STUDBOOK_DATA: server.data });
    expect([code, said]).toStrictEqual([1, expect.stringContaining(`process ${process.pid}`)]);
    expect((await server.get('/api/health').expect(200)).body).toMatchObject({ status: 'ready' });
  });

  it('at the same address says so in one line of words, and makes nothing', async () => {
    const port = new URL(server.address).port;
    const { code, said } = await stray({ PORT: port, HOST: '127.0.0.1', STUDBOOK_DATA: other });
    expect([code, said]).toStrictEqual([1, expect.stringMatching(/^Port \d+ is in use[^\n]+\n$/)]);
    expect(readdirSync(other)).toStrictEqual([]);
  });

  it('that did take over is noticed by health before anybody is turned away', async () => {
    const files = dataFolder(server.data);
    // In the same process, which is the one case that cannot be told from the server itself.
    const second = await openPlantAt({ at: { file: files.ledger }, keys: files.keys, name: 'second' });
    const { body } = await server.get('/api/health').expect(200);
    await second.close();
    expect(body).toMatchObject({ status: 'stepped-down' });
  });
});
