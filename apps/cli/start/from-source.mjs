import './node-version.mjs';
import { join } from 'node:path';
import { ensureInstalled } from './install.mjs';
import { ROOT } from './project.mjs';
import { run } from './run.mjs';

/** Runs one file of the source as it stands, compiled as it is loaded: node from-source.mjs FILE, then its arguments. */
await ensureInstalled({ withTools: true });
const [file, ...rest] = process.argv.slice(2);
process.exit(
  await run([
    process.execPath,
    '--require',
    join(ROOT, 'tests/support/typescript.cjs'),
    join(ROOT, file),
    ...rest,
  ]),
);
