import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, say } from './project.mjs';
import { run } from './run.mjs';

/** Where a silent minute would look like a hang. */
const STILL_AT_IT_MS = 15_000;

const packagesIn = (path) => JSON.parse(readFileSync(path, 'utf8')).packages;

/**
 * npm keeps its own list of what it installed. Compared with the lockfile it tells the truth at any time,
 * whoever installed; a stamp of ours would only tell of ourselves. Optional packages are another platform's.
 */
const installedAsLocked = (withTools) => {
  const installed = join(ROOT, 'node_modules/.package-lock.json');
  if (!existsSync(installed)) return false;

  const have = packagesIn(installed);
  return Object.entries(packagesIn(join(ROOT, 'package-lock.json'))).every(
    ([path, locked]) =>
      path === '' ||
      locked.optional ||
      locked.link ||
      (locked.dev && !withTools) ||
      have[path]?.version === locked.version,
  );
};

/** npm's own program where npm runs us, so that it is the same npm; else whatever `npm` is. */
const npm = (...args) =>
  process.env.npm_execpath?.endsWith('.js')
    ? [process.execPath, process.env.npm_execpath, ...args]
    : [process.platform === 'win32' ? 'npm.cmd' : 'npm', ...args];

/** `withTools`: also what only tests and checks need, which is more than half of all. */
export const ensureInstalled = async ({ withTools }) => {
  if (installedAsLocked(withTools)) return;

  say('Installing packages: the first time this takes a minute or more.');
  const began = performance.now();
  const timer = setInterval(() => {
    say(`  still installing (${Math.round((performance.now() - began) / 1000)} s)`);
  }, STILL_AT_IT_MS);
  const code = await run(
    npm('ci', '--no-audit', '--no-fund', '--loglevel=error', ...(withTools ? [] : ['--omit=dev'])),
    {
      shell: process.platform === 'win32',
    },
  ).finally(() => clearInterval(timer));
  if (code === 0) return;

  say(
    'The packages could not be installed. npm says why above. Where sqlite3 had to be built from source,\n' +
      'it needs python3, make and g++ (Debian: apt-get install python3 make g++). Then run the same command again.',
  );
  process.exit(code);
};
