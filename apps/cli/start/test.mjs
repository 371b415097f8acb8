import './node-version.mjs';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from './built.mjs';
import { ensureInstalled } from './install.mjs';
import { say, tool } from './project.mjs';
import { run } from './run.mjs';

/** What must hold of the text of the program, beside what the tests try of its behaviour. Each counts as one test. */
const CHECKS = [
  { name: 'types', command: [...tool('typescript/bin/tsc'), '--noEmit', '-p', 'tsconfig.json'] },
  {
    name: 'types of the screens',
    command: [...tool('typescript/bin/tsc'), '--noEmit', '-p', 'apps/web/tsconfig.json'],
  },
  { name: 'lint', command: [...tool('eslint/bin/eslint.js'), '.'] },
  {
    name: 'imports',
    command: [
      ...tool('dependency-cruiser/bin/dependency-cruise.mjs'),
      ...[
        'apps',
        'libs',
        'seeds',
        'tests',
        '--config',
        '.dependency-cruiser.cjs',
        '--output-type',
        'err-long',
      ],
    ],
  },
];

const runTests = async (args) => {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-tests-'));
  const results = join(folder, 'results.json');
  const workers = `--maxWorkers=${availableParallelism()}`;
  const code = await run([
    ...tool('jest/bin/jest.js'),
    workers,
    '--json',
    `--outputFile=${results}`,
    ...args,
  ]);
  const counted = existsSync(results) ? JSON.parse(readFileSync(results, 'utf8')) : undefined;
  rmSync(folder, { recursive: true });
  return {
    passed: counted?.numPassedTests ?? 0,
    // A test file that could not even be loaded has no tests to count, and is a failure all the same.
    failed: counted === undefined ? 1 : counted.numFailedTests + counted.numRuntimeErrorTestSuites,
    skipped: counted?.numPendingTests ?? 0,
    ok: code === 0,
  };
};

await ensureInstalled({ withTools: true });
say('Building and checking');
const steps = await build(CHECKS);
say('Testing');
const tests = await runTests(process.argv.slice(2));

const failedSteps = steps.filter(({ ok }) => !ok);
const passed = tests.passed + steps.length - failedSteps.length;
const failed = tests.failed + failedSteps.length;
say('');
say(
  `Builds and checks, each counted as one: ${steps.map(({ name, ok }) => `${name} ${ok ? 'passed' : 'FAILED'}`).join(', ')}`,
);
if (tests.skipped > 0) say(`Skipped: ${tests.skipped} (each says why above)`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 && tests.ok ? 0 : 1);
