import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const ROOT = resolve(__dirname, '../..');
const HOOK = join(__dirname, 'typescript.cjs');
const MAIN = join(ROOT, 'apps/cli/src/main.ts');

export type Run = { readonly code: number; readonly stdout: string; readonly stderr: string };

export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'studbook-cli-'));

/** The command as somebody types it, from the sources as they stand, in a process of its own. */
export const startStudbook = (...words: readonly string[]): ChildProcess => started(words, {});

export const studbook = (...words: readonly string[]): Promise<Run> => ended(started(words, {}));

/** The same on PostgreSQL. */
export const studbookOn = (url: string, ...words: readonly string[]): Promise<Run> =>
  ended(started(words, { DATABASE_URL: url }));

const started = (words: readonly string[], environment: NodeJS.ProcessEnv): ChildProcess =>
  spawn(process.execPath, ['--require', HOOK, MAIN, ...words], {
    env: { ...process.env, DATABASE_URL: '', STUDBOOK_DATA: '', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });

const ended = async (child: ChildProcess): Promise<Run> => {
  const said = { stdout: '', stderr: '' };
  child.stdout?.on('data', (text: Buffer) => (said.stdout += text.toString()));
  child.stderr?.on('data', (text: Buffer) => (said.stderr += text.toString()));
  const code = await new Promise<number>((done, fail) => {
    child.once('error', fail);
    child.once('close', (status) => done(status ?? -1));
  });
  return { code, ...said };
};
