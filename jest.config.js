const { compilerOptions } = require('./tsconfig.json');

const aliases = Object.fromEntries(
  Object.entries(compilerOptions.paths).map(([alias, [target]]) => [`^${alias}$`, `<rootDir>/${target}`]),
);

module.exports = {
  rootDir: __dirname,
  testMatch: ['<rootDir>/tests/**/*.spec.ts', '<rootDir>/tests/**/*.spec.tsx'],
  testEnvironment: 'node',
  moduleNameMapper: aliases,
  transform: {
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
