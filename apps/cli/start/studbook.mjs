#!/usr/bin/env node
import './node-version.mjs';
import { ensureBuilt } from './built.mjs';
import { ensureInstalled } from './install.mjs';
import { CLI, DATA, STANDING } from './project.mjs';
import { run } from './run.mjs';

await ensureInstalled({ withTools: false });
await ensureBuilt();
// Paths in the arguments are meant from where the person stands, not from where the project lies.
process.exitCode = await run([process.execPath, CLI, ...process.argv.slice(2)], {
  cwd: STANDING,
  env: { ...process.env, STUDBOOK_DATA: DATA },
});
