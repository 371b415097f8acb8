import './node-version.mjs';
import { build } from './built.mjs';
import { ensureInstalled } from './install.mjs';
import { say } from './project.mjs';

await ensureInstalled({ withTools: false });
say('Building');
const results = await build();
process.exit(results.every(({ ok }) => ok) ? 0 : 1);
