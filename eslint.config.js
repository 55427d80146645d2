import js from '@eslint/js';
import { configs as lit } from 'eslint-plugin-lit';
import { configs as wc } from 'eslint-plugin-wc';
import tseslint from 'typescript-eslint';

const TS = ['**/*.ts'];
const TESTS = ['**/*.test.ts', 'tests/**/*.ts'];
const SOURCE = ['packages/*/src/**/*.ts', 'apps/**/*.ts'];
const ENGINE = ['packages/engine/src/**/*.ts'];

const nodeGlobals = Object.fromEntries(
  ['process', 'console', 'performance', 'Buffer', 'URL'].map((name) => [name, 'readonly']),
);

const IMPURE = 'The engine has no clock, zone, locale, console, browser or float: pass in what it needs.';
const bannedGlobals = [
  'Date',
  'Intl',
  'console',
  'process',
  'globalThis',
  'window',
  'document',
  'parseFloat',
].map((name) => ({ name, message: IMPURE }));
const bannedProperties = [
  { object: 'Math', property: 'round', message: 'Round with Decimal, by a stated mode and step.' },
  { object: 'Math', property: 'random', message: IMPURE },
  { object: 'Number', property: 'parseFloat', message: 'A number from outside becomes a Decimal.' },
];
const noNumber = {
  selector: ":matches(CallExpression, NewExpression)[callee.name='Number']",
  message: 'A number from outside becomes a Decimal, exact.',
};
const noDefaultExport = { selector: 'ExportDefaultDeclaration', message: 'Export by name.' };
const noToFixed = {
  selector: "MemberExpression[property.name='toFixed']",
  message: 'Only quantity/ writes a Decimal out: use what it exports.',
};

const onTests =
  'MemberExpression[object.name=/^(it|test|describe|suite)$/][property.name=/^(only|skip|todo|skipIf|runIf)$/]';

export default tseslint.config(
  { ignores: ['.*/**', '**/dist/**', '**/coverage/**', 'docs/**'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  js.configs.recommended,
  ...tseslint.configs.strictTypeChecked.map((config) => ({ ...config, files: TS })),
  {
    files: TS,
    languageOptions: { parserOptions: { project: './tsconfig.json', tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
    },
  },
  {
    files: SOURCE,
    ignores: TESTS,
    rules: {
      'max-lines': ['error', { max: 250, skipBlankLines: true, skipComments: true }],
      'max-lines-per-function': ['error', { max: 50, skipBlankLines: true, skipComments: true }],
      'max-params': ['error', 4],
    },
  },
  {
    files: ENGINE,
    ignores: TESTS,
    rules: {
      'no-restricted-globals': ['error', ...bannedGlobals],
      'no-restricted-properties': ['error', ...bannedProperties],
      'no-restricted-syntax': ['error', noNumber, noDefaultExport, noToFixed],
    },
  },
  {
    // Decimal's own toFixed is the one exact way to write a number without an exponent.
    files: ['packages/engine/src/quantity/**/*.ts'],
    ignores: TESTS,
    rules: { 'no-restricted-syntax': ['error', noNumber, noDefaultExport] },
  },
  { files: ['packages/form/src/**/*.ts'], ...lit['flat/recommended'] },
  { files: ['packages/form/src/**/*.ts'], ...wc['flat/recommended'] },
  {
    files: TESTS,
    rules: {
      'no-restricted-syntax': [
        'error',
        {
          selector: 'MemberExpression[property.name=/^toBeClose/]',
          message: 'Amounts are exact: compare the decimal text.',
        },
        {
          selector: `:matches(${onTests}, ${onTests.replace('object', 'object.object')})`,
          message: 'Every test runs.',
        },
      ],
    },
  },
  { files: ['**/*.mjs', '**/*.js'], languageOptions: { globals: nodeGlobals } },
  { files: ['**/*.cjs'], languageOptions: { sourceType: 'commonjs', globals: { module: 'writable' } } },
);
