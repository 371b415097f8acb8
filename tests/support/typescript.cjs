/**
 * Lets a plain `node --require` run the project's TypeScript, for a test's child process and the measurements:
 * what they load is then the source as it stands, never a build that may be older.
 */
const { readFileSync } = require('node:fs');
const Module = require('node:module');
const { join } = require('node:path');
const { transformSync } = require('@swc/core');
const { compilerOptions } = require('../../tsconfig.json');

const ROOT = join(__dirname, '../..');
const resolve = Module._resolveFilename;
Module._resolveFilename = function (request, ...rest) {
  const [target] = compilerOptions.paths[request] ?? [];
  return resolve.call(this, target === undefined ? request : join(ROOT, target), ...rest);
};

Module._extensions['.ts'] = (module, filename) => {
  const { code } = transformSync(readFileSync(filename, 'utf8'), {
    filename,
    jsc: {
      parser: { syntax: 'typescript', decorators: true },
      transform: { legacyDecorator: true, decoratorMetadata: true },
      target: 'es2022',
      keepClassNames: true,
    },
    module: { type: 'commonjs' },
    sourceMaps: 'inline',
  });
  module._compile(code, filename);
};
