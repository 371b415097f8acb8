import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
export const SERVER = join(ROOT, 'dist/apps/server/src/main.js');
export const CLI = join(ROOT, 'dist/apps/cli/src/main.js');

/** Where the person stands: npm itself goes to the project's folder, and says in INIT_CWD where it came from. */
export const STANDING =
  resolve(process.cwd()) === resolve(ROOT) ? (process.env.INIT_CWD ?? ROOT) : process.cwd();

/** The plant's data, the same for the server and the command line, wherever they are started from. */
export const DATA = process.env.STUDBOOK_DATA
  ? resolve(STANDING, process.env.STUDBOOK_DATA)
  : join(ROOT, 'data');

/** A tool of ours from node_modules, run by the very Node that runs this. */
export const tool = (path) => [process.execPath, join(ROOT, 'node_modules', path)];

/** For people, on stderr, so that what a command itself prints can be piped. */
export const say = (words) => {
  process.stderr.write(`${words}\n`);
};
