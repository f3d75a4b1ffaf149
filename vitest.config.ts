import { defineConfig } from 'vitest/config';

/** These put something else in the place of a module of Node's, which others must not see. */
const alone = ['tests/html/site.test.ts', 'tests/records/read-tree.test.ts'];

export default defineConfig({
  test: {
    testTimeout: 120_000,
    hookTimeout: 120_000,
    env: { TZ: 'UTC' },
    maxWorkers: 2,
    reporters: process.env['CI'] ? ['default', ['json', { outputFile: 'coverage/tests.json' }]] : ['default'],
    projects: [
      {
        extends: true,
        // Test files of one worker share what they import: the demonstration guide is composed a few times, not thirty.
        test: { name: 'shared', include: ['tests/**/*.test.ts'], exclude: alone, isolate: false },
      },
      { extends: true, test: { name: 'alone', include: alone } },
    ],
  },
});
