// Writes libs/record/src/EVENTS.md from the event types. Node runs no TypeScript, so jest's own transform is borrowed.
import { transformFileSync } from '@swc/core';
import { createRequire } from 'node:module';
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const source = join(here, 'event-catalogue.ts');
const { code } = transformFileSync(source, {
  jsc: { parser: { syntax: 'typescript' }, target: 'es2022' },
  module: { type: 'commonjs' },
});
const loaded = { exports: {} };
new Function('exports', 'require', 'module', '__dirname', code)(
  loaded.exports,
  createRequire(source),
  loaded,
  here,
);
writeFileSync(loaded.exports.CATALOGUE, loaded.exports.catalogue());
console.log(`Wrote ${loaded.exports.CATALOGUE}`);
