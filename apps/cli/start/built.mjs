import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { ROOT, say, tool } from './project.mjs';
import { sideBySide } from './run.mjs';

const STAMP = join(ROOT, 'dist/.built-from');
/** What a build is made from. The rulebook's files are read where they lie, and need none. */
const SOURCES = [
  'apps',
  'libs',
  'seeds/src',
  'tsconfig.json',
  'nest-cli.json',
  'package.json',
  'package-lock.json',
];
const COMPILED = ['dist/apps', 'dist/libs', 'dist/seeds', 'dist/web'];

const filesUnder = (path) => {
  const full = join(ROOT, path);
  if (!existsSync(full)) return [];
  if (statSync(full).isFile()) return [path];
  return readdirSync(full, { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) =>
      entry.isDirectory() ? filesUnder(`${path}/${entry.name}`) : [`${path}/${entry.name}`],
    );
};

/** Names, sizes and times of change: a few milliseconds, where reading every file would take longer than starting. */
const sourcesNow = () => {
  const hash = createHash('sha256');
  for (const path of SOURCES.flatMap(filesUnder)) {
    const { size, mtimeMs } = statSync(join(ROOT, path));
    hash.update(`${path}\n${size}\n${mtimeMs}\n`);
  }
  return hash.digest('hex');
};

export const BUILD_STEPS = [
  // One compilation makes both: they share nearly all of their sources.
  {
    name: 'server and command line',
    command: [...tool('@nestjs/cli/bin/nest.js'), 'build', 'server'],
  },
  { name: 'screens', command: [...tool('vite/bin/vite.js'), 'build', 'apps/web', '--logLevel', 'warn'] },
];

const isBuilt = () => existsSync(STAMP) && readFileSync(STAMP, 'utf8') === sourcesNow();

/** Clears what an older build left, so that a file whose source is gone cannot be run. */
const beginBuild = () => {
  rmSync(STAMP, { force: true });
  for (const path of COMPILED) rmSync(join(ROOT, path), { recursive: true, force: true });
  mkdirSync(join(ROOT, 'dist'), { recursive: true });
};

/** Runs the build, and `beside` it whatever else there is to do. Resolves to how each step went. */
export const build = async (beside = []) => {
  const from = sourcesNow();
  beginBuild();
  const results = await sideBySide([...BUILD_STEPS, ...beside], availableParallelism());
  const built = BUILD_STEPS.every(({ name }) => results.some((result) => result.name === name && result.ok));
  if (built) writeFileSync(STAMP, from);
  return results;
};

export const ensureBuilt = async () => {
  if (isBuilt()) return;

  say('Building: something has changed since the last time.');
  const results = await build();
  if (results.some(({ ok }) => !ok)) process.exit(1);
};
