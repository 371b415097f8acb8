import './node-version.mjs';
import { join } from 'node:path';
import { ensureInstalled } from './install.mjs';
import { ROOT } from './project.mjs';
import { run } from './run.mjs';

/** Measures the source as it stands, compiled as it is loaded, so that no older build is measured by mistake. */
await ensureInstalled({ withTools: true });
const loader = join(ROOT, 'tests/support/typescript.cjs');
process.exit(
  await run([
    process.execPath,
    '--require',
    loader,
    join(ROOT, 'tests/bench/main.ts'),
    ...process.argv.slice(2),
  ]),
);
