import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const PURE = ['kernel', 'contracts', 'rulebook', 'judge', 'record', 'proof', 'quality', 'tracing'];

const noDefaultExportsOrEnums = [
  { selector: 'ExportDefaultDeclaration', message: 'Named exports only.' },
  { selector: 'TSEnumDeclaration', message: 'Use a union of literals.' },
];

export default tseslint.config(
  {
    ignores: ['dist/', 'node_modules/', 'data/', 'coverage/', 'tests/style/forbidden/'],
  },
  {
    files: ['**/*.{ts,tsx}'],
    extends: [...tseslint.configs.strictTypeChecked],
    languageOptions: {
      parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
      'max-lines-per-function': ['error', { max: 50, skipBlankLines: true, skipComments: true }],
      'max-params': ['error', 4],
      'max-depth': ['error', 3],
      complexity: ['error', 10],
      'no-warning-comments': 'error',
      'no-restricted-syntax': ['error', ...noDefaultExportsOrEnums],
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/consistent-type-definitions': ['error', 'type'],
      '@typescript-eslint/no-extraneous-class': 'off',
      '@typescript-eslint/restrict-template-expressions': [
        'error',
        { allowNumber: true, allowBoolean: true },
      ],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/no-unnecessary-type-parameters': 'off',
    },
  },
  {
    files: PURE.map((name) => `libs/${name}/src/**/*.ts`),
    rules: {
      'no-restricted-globals': [
        'error',
        ...['Date', 'process', 'console', 'setTimeout', 'setInterval', 'fetch', 'crypto'].map((name) => ({
          name,
          message: 'A pure library takes this in as data or as a function.',
        })),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Take it in as a function.' },
      ],
      'no-restricted-syntax': [
        'error',
        ...noDefaultExportsOrEnums,
        { selector: ':function[async=true]', message: 'Pure code does not wait.' },
        { selector: 'ThrowStatement', message: 'Return a decision or a finding; only assertNever throws.' },
      ],
    },
  },
  {
    // The only place where an instant becomes a number, and the one that may crash on a forgotten case.
    files: ['libs/kernel/src/instant.ts', 'libs/kernel/src/assert-never.ts'],
    rules: { 'no-restricted-globals': 'off', 'no-restricted-syntax': 'off' },
  },
  {
    files: ['apps/web/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks },
    rules: {
      // A screen's markup is long without being complicated.
      'max-lines-per-function': ['error', { max: 90, skipBlankLines: true, skipComments: true }],
      'react-hooks/rules-of-hooks': 'error',
      'react-hooks/exhaustive-deps': 'error',
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: { attributes: false } }],
    },
  },
  {
    files: ['tests/**/*.{ts,tsx}'],
    rules: {
      'max-lines-per-function': 'off',
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
    },
  },
  {
    files: ['**/vite.config.ts'],
    rules: { 'no-restricted-syntax': 'off' },
  },
);
