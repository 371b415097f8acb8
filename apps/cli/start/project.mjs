import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
export const SERVER = join(ROOT, 'dist/apps/server/src/main.js');
export const CLI = join(ROOT, 'dist/apps/cli/src/main.js');

/** A tool of ours from node_modules, run by the very Node that runs this. */
export const tool = (path) => [process.execPath, join(ROOT, 'node_modules', path)];

/** For people, on stderr, so that what a command itself prints can be piped. */
export const say = (words) => {
  process.stderr.write(`${words}\n`);
};
