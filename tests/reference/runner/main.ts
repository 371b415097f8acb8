import { resolve } from 'node:path';
import { readCases } from './case-file';
import { runCase } from './run-case';

/** npm run reference -- DIR: each case of a folder by its id, passed or failed, and how many of each. */
const asked = process.argv[2] ?? process.env['CASES_DIR'];
const from = process.env['INIT_CWD'] ?? process.cwd();
const folder = asked === undefined ? `${__dirname}/../cases` : resolve(from, asked);
const cases = readCases(folder);
/** A case may name one of ours. */
const known = [...cases, ...readCases(`${__dirname}/../cases`)];
let failed = 0;
for (const one of cases) {
  const { failures, notCompared } = runCase(one, known);
  if (failures.length > 0) failed += 1;
  const rest =
    failures.length === 0 && notCompared.length > 0 ? ` (not compared: ${notCompared.join(', ')})` : '';
  console.log(`${one.id}: ${failures.length === 0 ? 'passed' : 'failed'}${rest}`);
  for (const failure of failures.slice(0, 10)) console.log(`    ${failure}`);
}
console.log(`${cases.length - failed} passed, ${failed} failed`);
process.exitCode = failed > 0 || cases.length === 0 ? 1 : 0;
