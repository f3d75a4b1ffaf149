import { defineConfig } from 'eslint/config';
import tseslint from 'typescript-eslint';

/** Why a module between records and publish may not reach outside: same records in, same bytes out. */
const pureReason = 'Only records/, publish/ and the command line touch the outside world; pass the value in.';

export default defineConfig(
  { ignores: ['dist/', 'node_modules/', 'coverage/', 'tests/**/golden/'] },
  ...tseslint.configs.strictTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: { allowDefaultProject: ['*.js'] } } },
    rules: {
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unnecessary-condition': ['error', { allowConstantLoopConditions: true }],
    },
  },
  {
    files: ['scripts/**/*.ts'],
    ignores: [
      'scripts/records/**',
      'scripts/publish/**',
      'scripts/groundsheet.ts',
      'scripts/serve.ts',
      'scripts/check-pdf.ts',
      'scripts/bench-pdf.ts',
      'scripts/make-*.ts',
      'scripts/html/site.ts',
    ],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          paths: ['fs', 'node:fs', 'node:fs/promises', 'node:http', 'node:https', 'node:net'].map((name) => ({
            name,
            message: pureReason,
          })),
        },
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: pureReason },
        { object: 'Math', property: 'random', message: pureReason },
      ],
      'no-restricted-globals': ['error', { name: 'fetch', message: pureReason }],
    },
  },
);
