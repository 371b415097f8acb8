const { compilerOptions } = require('./tsconfig.json');

const aliases = Object.fromEntries(
  Object.entries(compilerOptions.paths).map(([alias, [target]]) => [`^${alias}$`, `<rootDir>/${target}`]),
);

/** Packages that are ES modules only. Node itself takes them from CommonJS; its test runner does not yet. */
const ES_MODULES = ['@noble', '@scure', 'jose', 'oauth4webapi', 'openid-client'];

module.exports = {
  rootDir: __dirname,
  testMatch: ['<rootDir>/tests/**/*.spec.ts', '<rootDir>/tests/**/*.spec.tsx'],
  testEnvironment: 'node',
  moduleNameMapper: aliases,
  transformIgnorePatterns: [`/node_modules/(?!(${ES_MODULES.join('|')})/)`],
  transform: {
    [`/node_modules/(${ES_MODULES.join('|')})/.+\\.js$`]: [
      '@swc/jest',
      { jsc: { target: 'es2022' }, module: { type: 'commonjs' } },
    ],
    '^.+\\.tsx?$': [
      '@swc/jest',
      {
        jsc: {
          parser: { syntax: 'typescript', tsx: true, decorators: true },
          transform: { legacyDecorator: true, decoratorMetadata: true },
          target: 'es2022',
          keepClassNames: true,
        },
      },
    ],
  },
  modulePathIgnorePatterns: ['<rootDir>/dist/', '<rootDir>/data/', '<rootDir>/.cache/'],
  testTimeout: 30_000,
};
