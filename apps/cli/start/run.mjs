import { spawn } from 'node:child_process';
import { ROOT, say } from './project.mjs';

const seconds = (since) => `${((performance.now() - since) / 1000).toFixed(1)} s`;

/** Runs to the end with our own input and output. Resolves to the exit code. */
export const run = ([command, ...args], options = {}) =>
  new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: ROOT, stdio: 'inherit', ...options });
    child.once('error', reject);
    child.once('close', (code, signal) => resolve(code ?? (signal === 'SIGINT' ? 130 : 1)));
  });

/** Runs quietly and tells in one line how it went; shows all it said when it went wrong. Resolves to success. */
export const step = async (name, [command, ...args]) => {
  const began = performance.now();
  const said = [];
  const code = await new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] });
    child.stdout.on('data', (chunk) => said.push(chunk));
    child.stderr.on('data', (chunk) => said.push(chunk));
    child.once('error', reject);
    child.once('close', resolve);
  });
  say(`  ${code === 0 ? 'done  ' : 'FAILED'} ${name} (${seconds(began)})`);
  if (code !== 0) say(Buffer.concat(said).toString().trimEnd());
  return code === 0;
};

/** Runs steps side by side, as many as there are cores to run them. */
export const sideBySide = async (steps, width) => {
  const waiting = [...steps];
  const results = [];
  const take = async () => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      results.push({ name: next.name, ok: await step(next.name, next.command) });
    }
  };
  await Promise.all(Array.from({ length: width }, take));
  return results;
};
