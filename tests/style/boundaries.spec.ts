import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

/**
 * Goal: a boundary rule that nobody has seen fail is a comment, so each is seen failing here.
 * Method: a throw-away project with one forbidden import per rule, cruised with the real configuration.
 */
const ROOT = join(__dirname, '..', '..');

const FORBIDDEN: readonly { readonly rule: string; readonly file: string; readonly source: string }[] = [
  { rule: 'kernel-imports', file: 'libs/kernel/src/a.ts', source: `import type {} from '../../judge/src';` },
  { rule: 'judge-imports', file: 'libs/judge/src/a.ts', source: `import '../../rulebook/src';` },
  { rule: 'proof-imports', file: 'libs/proof/src/a.ts', source: `import '../../ledger/src';` },
  { rule: 'quality-imports', file: 'libs/quality/src/a.ts', source: `import '../../views/src';` },
  { rule: 'tracing-imports', file: 'libs/tracing/src/a.ts', source: `import '../../views/src';` },
  { rule: 'contracts-imports', file: 'libs/contracts/src/a.ts', source: `import '../../record/src';` },
  { rule: 'rulebook-imports', file: 'libs/rulebook/src/a.ts', source: `import '../../record/src';` },
  { rule: 'record-imports', file: 'libs/record/src/a.ts', source: `import '../../ledger/src';` },
  { rule: 'ledger-imports', file: 'libs/ledger/src/a.ts', source: `import '../../views/src';` },
  { rule: 'views-imports', file: 'libs/views/src/a.ts', source: `import '../../plant/src';` },
  { rule: 'packet-imports', file: 'libs/packet/src/a.ts', source: `import '../../plant/src';` },
  { rule: 'plant-imports', file: 'libs/plant/src/a.ts', source: `import '../../../apps/server/src/main';` },
  { rule: 'pure-libs-stay-pure', file: 'libs/judge/src/b.ts', source: `import 'node:fs';` },
  { rule: 'typeorm-stays-in-its-folders', file: 'libs/views/src/b.ts', source: `import 'typeorm';` },
  { rule: 'nest-stays-in-server', file: 'libs/plant/src/b.ts', source: `import '@nestjs/common';` },
  { rule: 'web-draws-answers', file: 'apps/web/src/a.ts', source: `import '../../../libs/plant/src';` },
  { rule: 'web-ships-no-schemas', file: 'apps/web/src/b.ts', source: `import 'zod';` },
  {
    rule: 'apps-speak-to-the-plant',
    file: 'apps/server/src/work/b.ts',
    source: `import '../../../../libs/ledger/src';`,
  },
  { rule: 'server-folders-are-strangers', file: 'apps/server/src/work/a.ts', source: `import '../holds/a';` },
  {
    rule: 'stream-kinds-are-strangers',
    file: 'libs/record/src/station/a.ts',
    source: `import '../lot/a';`,
  },
  {
    rule: 'through-the-front-door',
    file: 'libs/plant/src/c.ts',
    source: `import '../../kernel/src/inner';`,
  },
  { rule: 'tests-never-ship', file: 'libs/plant/src/d.ts', source: `import '../../../tests/support/a';` },
  { rule: 'tests-are-strangers', file: 'tests/plant/a.spec.ts', source: `import './b.spec';` },
  { rule: 'no-cycles', file: 'libs/plant/src/e.ts', source: `import './f';` },
  { rule: 'no-orphans', file: 'libs/plant/src/lonely.ts', source: `export const lonely = 1;` },
  { rule: 'resolvable', file: 'libs/plant/src/g.ts', source: `import './nowhere';` },
];

const BYSTANDERS: readonly string[] = [
  ...['kernel', 'judge', 'rulebook', 'record', 'ledger', 'views', 'plant'].map(
    (name) => `libs/${name}/src/index.ts`,
  ),
  'libs/kernel/src/inner.ts',
  'libs/record/src/lot/a.ts',
  'apps/server/src/main.ts',
  'apps/server/src/holds/a.ts',
  'tests/support/a.ts',
  'tests/plant/b.spec.ts',
];

const PACKAGES = ['typeorm', '@nestjs/common', 'zod'];

type Violation = { readonly rule: { readonly name: string }; readonly from: string };

describe('the boundary rules', () => {
  let project: string;
  let violations: readonly Violation[];

  const write = (file: string, source: string): void => {
    mkdirSync(dirname(join(project, file)), { recursive: true });
    writeFileSync(join(project, file), `${source}\nexport {};\n`);
  };

  beforeAll(() => {
    project = mkdtempSync(join(tmpdir(), 'studbook-boundaries-'));
    for (const name of ['.dependency-cruiser.cjs', 'tsconfig.json'])
      cpSync(join(ROOT, name), join(project, name));
    const dependencies = Object.fromEntries(PACKAGES.map((name) => [name, '1.0.0']));
    writeFileSync(join(project, 'package.json'), JSON.stringify({ name: 'forbidden', dependencies }));
    for (const name of PACKAGES) {
      write(`node_modules/${name}/index.js`, 'module.exports = {};');
      writeFileSync(
        join(project, 'node_modules', name, 'package.json'),
        JSON.stringify({ name, version: '1.0.0', main: 'index.js' }),
      );
    }
    for (const file of BYSTANDERS) write(file, '');
    write('libs/plant/src/f.ts', `import './e';`);
    for (const { file, source } of FORBIDDEN) write(file, source);

    const depcruise = join(ROOT, 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs');
    const report = execFileSync(
      process.execPath,
      [depcruise, 'apps', 'libs', 'tests', '--config', '.dependency-cruiser.cjs', '--output-type', 'json'],
      { cwd: project, maxBuffer: 64 * 1024 * 1024, encoding: 'utf8' },
    );
    violations = JSON.parse(report).summary.violations;
  });

  afterAll(() => rmSync(project, { recursive: true, force: true }));

  it.each(FORBIDDEN)('$rule fires on $file', ({ rule, file }) => {
    expect(violations.filter((violation) => violation.rule.name === rule).map(({ from }) => from)).toContain(
      file,
    );
  });

  it('leaves none of the configured rules unseen', () => {
    const configured: readonly { readonly name: string }[] = jest.requireActual(
      join(ROOT, '.dependency-cruiser.cjs'),
    ).forbidden;
    const seen = new Set(FORBIDDEN.map(({ rule }) => rule));
    expect(configured.map(({ name }) => name).filter((name) => !seen.has(name))).toStrictEqual([]);
  });
});
