import { execFile } from 'node:child_process';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';

const START = join(__dirname, '../../apps/cli/start/start.mjs');

const startAt = (port: number): Promise<{ readonly code: number; readonly said: string }> =>
  new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      [START],
      { env: { ...process.env, PORT: String(port) } },
      (_, out, said) => {
        resolve({ code: child.exitCode ?? -1, said: out + said });
      },
    );
  });

describe('npm start', () => {
  it('says at once that its port is taken, and which other to choose, before anything is installed or built', async () => {
    const other = createServer();
    await new Promise<void>((ready) => other.listen(0, '127.0.0.1', ready));
    const { port } = other.address() as AddressInfo;

    expect(await startAt(port)).toStrictEqual({
      code: 1,
      said: expect.stringContaining(`Port ${String(port)} is in use by another program`),
    });
    await new Promise((closed) => other.close(closed));
  });
});
