import { defineConfig } from 'vitest/config';

/** A guard against a test that hangs, on a machine that others load too. */
const testTimeout = 240_000;
const setupFiles = ['test/seed.ts'];

export default defineConfig({
  test: {
    // Every core: by itself it would leave one free, which of two is half.
    maxWorkers: '100%',
    projects: [
      {
        test: {
          name: 'core',
          include: ['test/**/*.test.ts'],
          exclude: ['test/cli/**', 'test/browser/**'],
          setupFiles,
          testTimeout,
        },
      },
      {
        test: {
          name: 'command',
          include: ['test/cli/**/*.test.ts'],
          globalSetup: 'test/cli/buildCommand.ts',
          setupFiles,
          testTimeout,
          hookTimeout: testTimeout,
        },
      },
    ],
  },
});
